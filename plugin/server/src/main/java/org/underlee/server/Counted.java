package org.underlee.server;

import java.net.http.HttpResponse.BodySubscriber;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.Flow;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;

/** Bytes that have gone over the wire, counted by the thread that moves them. */
final class Counted {
  private final AtomicLong bytes = new AtomicLong();
  private final AtomicLong total = new AtomicLong();

  long bytes() {
    return bytes.get();
  }

  long total() {
    return total.get();
  }

  void expect(long all) {
    total.set(all);
  }

  /** Bytes on their way out. */
  Flow.Subscriber<ByteBuffer> out(Flow.Subscriber<? super ByteBuffer> to) {
    return new Relay<>(to, part -> bytes.addAndGet(part.remaining()));
  }

  /** Bytes on their way in. */
  <T> BodySubscriber<T> in(BodySubscriber<T> to) {
    return new Incoming<>(to, part -> part.forEach(buffer -> bytes.addAndGet(buffer.remaining())));
  }

  private static class Relay<P> implements Flow.Subscriber<P> {
    private final Flow.Subscriber<? super P> to;
    private final Consumer<P> count;

    Relay(Flow.Subscriber<? super P> to, Consumer<P> count) {
      this.to = to;
      this.count = count;
    }

    @Override
    public void onSubscribe(Flow.Subscription subscription) {
      to.onSubscribe(subscription);
    }

    @Override
    public void onNext(P part) {
      count.accept(part);
      to.onNext(part);
    }

    @Override
    public void onError(Throwable error) {
      to.onError(error);
    }

    @Override
    public void onComplete() {
      to.onComplete();
    }
  }

  private static final class Incoming<T> extends Relay<List<ByteBuffer>>
      implements BodySubscriber<T> {
    private final BodySubscriber<T> to;

    Incoming(BodySubscriber<T> to, Consumer<List<ByteBuffer>> count) {
      super(to, count);
      this.to = to;
    }

    @Override
    public CompletionStage<T> getBody() {
      return to.getBody();
    }
  }
}
