package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** Work beside the screen's thread gives way to it. */
class JobThreadTest {
  @Test
  void jobsAndTheThreadsThatTheyStartAreLessUrgentThanTheScreen() throws Exception {
    CompletableFuture<Thread> started = new CompletableFuture<>();
    Screen screen = new Screen();
    try (Newest work = new Newest("a job", screen)) {
      work.run(Thread::new, started::complete, started::completeExceptionally);
      screen.runNext();
      Thread ofTheJob = started.get(1, TimeUnit.MINUTES);
      assertThat(ofTheJob.getPriority()).isLessThan(Thread.currentThread().getPriority());
    }
  }
}
