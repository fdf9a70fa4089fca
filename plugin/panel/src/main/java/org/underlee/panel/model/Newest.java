package org.underlee.panel.model;

import java.util.concurrent.Callable;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;

/**
 * Work beside the screen's thread, one job after the other, of which only the newest counts: a job
 * that another one has overtaken is not begun, and its result is dropped. A job that is cancelled
 * runs to its end unseen and does not hold up the next.
 */
final class Newest implements AutoCloseable {
  private final String name;
  private final Executor screen;
  private final AtomicLong newest = new AtomicLong();
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
    return Executors.newSingleThreadExecutor(
        task -> {
          Thread thread = new Thread(task, name);
          thread.setDaemon(true);
          return thread;
        });
  }

  <T> void run(Callable<T> job, Consumer<T> done, Consumer<Throwable> failed) {
    long number = newest.incrementAndGet();
    worker.execute(
        () -> {
          if (isNewest(number)) {
            attempt(number, job, done, failed);
          }
        });
  }

  /** Failures of any kind are shown, or the screen would wait for ever. */
  private <T> void attempt(
      long number, Callable<T> job, Consumer<T> done, Consumer<Throwable> failed) {
    try {
      T result = job.call();
      deliver(number, () -> done.accept(result));
    } catch (Exception | OutOfMemoryError | StackOverflowError e) {
      deliver(number, () -> failed.accept(e));
    }
  }

  private void deliver(long number, Runnable onScreen) {
    screen.execute(
        () -> {
          if (isNewest(number)) {
            onScreen.run();
          }
        });
  }

  private boolean isNewest(long number) {
    return newest.get() == number;
  }

  void cancel() {
    newest.incrementAndGet();
    worker.shutdown();
    worker = worker();
  }

  @Override
  public void close() {
    newest.incrementAndGet();
    worker.shutdownNow();
  }
}
