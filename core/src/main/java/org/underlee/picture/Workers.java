package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/** Runs numbered tasks on a given number of threads; the caller's own is one of them. */
final class Workers implements AutoCloseable {
  private final int threads;
  private final ExecutorService others;

  Workers(int threads) {
    this.threads = threads;
    this.others =
        Executors.newFixedThreadPool(
            Math.max(1, threads - 1),
            task -> {
              Thread thread = new Thread(task, "picture");
              thread.setDaemon(true);
              return thread;
            });
  }

  /** Does tasks {@code 0 … count - 1} in any order and returns when all are done. */
  void run(int count, IntConsumer task) {
    runEach(count, () -> task);
  }

  /**
   * As {@link #run}, where each thread has something of its own to do its tasks with.
   *
   * @param tool made once on each thread
   */
  void runEach(int count, Supplier<IntConsumer> tool) {
    AtomicInteger next = new AtomicInteger();
    Runnable loop =
        () -> {
          IntConsumer task = tool.get();
          for (int k = next.getAndIncrement(); k < count; k = next.getAndIncrement()) {
            task.accept(k);
          }
        };
    List<Future<?>> running = new ArrayList<>();
    for (int i = 1; i < Math.min(threads, count); i++) {
      running.add(others.submit(loop));
    }
    loop.run();
    running.forEach(Workers::await);
  }

  private static void await(Future<?> task) {
    try {
      task.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new CancellationException("drawing was interrupted");
    } catch (ExecutionException e) {
      throw new IllegalStateException("drawing failed: " + e.getCause(), e.getCause());
    }
  }

  @Override
  public void close() {
    others.shutdownNow();
  }
}
