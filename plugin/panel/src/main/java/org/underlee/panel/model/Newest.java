package org.underlee.panel.model;

import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * Work beside the screen's thread, one job after the other, of which the newest counts: a job that
 * another one has overtaken is not begun. A job that is cancelled is told to stop, and does not
 * hold up the next even where it takes a while to.
 */
final class Newest implements AutoCloseable {
  private final String name;
  private final Executor screen;
  private final AtomicLong newest = new AtomicLong();
  private final AtomicLong cancelled = new AtomicLong();
  private ExecutorService worker;

  /**
   * @param screen runs results on the screen's thread
   */
  Newest(String name, Executor screen) {
    this.name = name;
    this.screen = screen;
    this.worker = worker();
  }

  private ExecutorService worker() {
    return Executors.newSingleThreadExecutor(jobs -> new JobThread(jobs, name));
  }

  /** A job whose result counts only while no newer one was asked for; it stops for that one. */
  <T> void run(Callable<T> job, Consumer<T> done, Consumer<Throwable> failed) {
    BooleanSupplier counts = isNewest(newest.incrementAndGet());
    start(job, done, failed, counts, counts);
  }

  /**
   * A job whose result is shown even when a newer one was asked for meanwhile: a hand that drags
   * must see something. Those that were not begun by then are left out.
   */
  <T> void follow(Callable<T> job, Consumer<T> done, Consumer<Throwable> failed) {
    start(job, done, failed, isNewest(newest.incrementAndGet()), isNotCancelled());
  }

  /** A job that is done whatever comes after it: a file that is written. */
  <T> void inTurn(Callable<T> job, Consumer<T> done, Consumer<Throwable> failed) {
    BooleanSupplier counts = isNotCancelled();
    start(job, done, failed, counts, counts);
  }

  private BooleanSupplier isNewest(long number) {
    return () -> newest.get() == number;
  }

  private BooleanSupplier isNotCancelled() {
    long since = cancelled.get();
    return () -> cancelled.get() == since;
  }

  /** A job that shows what it has so far. */
  interface Stepwise<T> {
    /**
     * Does it.
     *
     * @param shown told what there is so far; runs on the screen's thread
     * @param isNewest whether nothing newer was asked for meanwhile
     * @return empty when it was given up for something newer
     */
    Optional<T> run(Consumer<Runnable> shown, BooleanSupplier isNewest) throws Exception;
  }

  /** As {@link #follow}, for a job that shows what it has so far and gives up for a newer one. */
  <T> void follow(Stepwise<T> job, Consumer<T> done, Consumer<Throwable> failed) {
    BooleanSupplier begins = isNewest(newest.incrementAndGet());
    BooleanSupplier counts = isNotCancelled();
    this.<Optional<T>>start(
        () -> job.run(r -> deliver(r, counts), begins),
        made -> made.ifPresent(done),
        failed,
        begins,
        counts);
  }

  private <T> void start(
      Callable<T> job,
      Consumer<T> done,
      Consumer<Throwable> failed,
      BooleanSupplier begins,
      BooleanSupplier counts) {
    worker.execute(
        () -> {
          if (begins.getAsBoolean()) {
            attempt(job, done, failed, counts);
          }
        });
  }

  /** Failures of any kind are shown, or the screen would wait for ever. */
  private <T> void attempt(
      Callable<T> job, Consumer<T> done, Consumer<Throwable> failed, BooleanSupplier counts) {
    try {
      T result = JobThread.call(job, counts);
      deliver(() -> done.accept(result), counts);
    } catch (Exception | OutOfMemoryError | StackOverflowError e) {
      deliver(() -> failed.accept(e), counts); // to nobody where it was stopped
    }
  }

  private void deliver(Runnable onScreen, BooleanSupplier counts) {
    screen.execute(
        () -> {
          if (counts.getAsBoolean()) {
            onScreen.run();
          }
        });
  }

  /** Stops a job that only counts while it is the newest: something else has made it old. */
  void overtake() {
    newest.incrementAndGet();
  }

  void cancel() {
    newest.incrementAndGet();
    cancelled.incrementAndGet();
    worker.shutdown();
    worker = worker();
  }

  @Override
  public void close() {
    newest.incrementAndGet();
    cancelled.incrementAndGet();
    worker.shutdownNow();
  }
}
