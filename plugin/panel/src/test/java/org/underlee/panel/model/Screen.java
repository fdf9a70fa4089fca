package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.BlockingQueue;
import java.util.concurrent.Executor;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** Stands for the screen's thread: runs what is asked of it when the test lets it. */
final class Screen implements Executor {
  private static final long PATIENCE_SECONDS = 60;

  private final BlockingQueue<Runnable> tasks = new LinkedBlockingQueue<>();

  @Override
  public void execute(Runnable task) {
    tasks.add(task);
  }

  void runWaiting() {
    for (Runnable next = tasks.poll(); next != null; next = tasks.poll()) {
      next.run();
    }
  }

  /** The hand lets go first: nothing is designed while it drags. */
  void runUntilWhole(Session session) throws InterruptedException {
    session.decide("let go", d -> d);
    while (!session.busyWith().get().isEmpty()) {
      runNext();
    }
  }

  void runNext() throws InterruptedException {
    Runnable next = tasks.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
    assertThat(next).as("something happens").isNotNull();
    next.run();
  }
}
