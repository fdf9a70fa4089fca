package org.underlee.panel;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import javafx.application.Platform;

/**
 * Beats on the screen's thread: the longest time between two answers, less the pause between two
 * beats, is the longest stall, so that a pause of all threads counts wherever it falls; the most
 * processor time between two is what of it is our own, and not the wait of a busy machine. Where a
 * beat waits too long, it notes what the screen's thread does meanwhile.
 */
final class Stalls {
  private static final long BEAT_MS = 2;
  private static final long LOOK_MS = 8;
  private static final int FRAMES = 3;

  private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
  private final AtomicLong longest = new AtomicLong();
  private final AtomicLong mostWork = new AtomicLong();
  private final long tellFrom;
  private final List<String> told = new ArrayList<>();
  private volatile Thread screen = Thread.currentThread();
  private volatile long answered;
  private long workBefore;

  /**
   * @param tellFrom milliseconds from which on a stall is told with what went on
   */
  Stalls(long tellFrom) {
    this.tellFrom = tellFrom;
  }

  void watch() {
    Thread beat = new Thread(this::beat, "beat");
    beat.setDaemon(true);
    beat.start();
  }

  private void beat() {
    try {
      long due = System.nanoTime();
      while (true) {
        CountDownLatch done = new CountDownLatch(1);
        Platform.runLater(() -> answer(done));
        List<String> seen = new ArrayList<>();
        while (!done.await(LOOK_MS, TimeUnit.MILLISECONDS)) {
          if (tellFrom < Long.MAX_VALUE) {
            seen.add(doing());
          }
        }
        long waited = answered - due;
        due = answered + TimeUnit.MILLISECONDS.toNanos(BEAT_MS);
        longest.accumulateAndGet(waited, Math::max);
        long ms = TimeUnit.NANOSECONDS.toMillis(waited);
        if (ms >= tellFrom) {
          synchronized (told) {
            told.add(ms + " ms\n" + seen.stream().distinct().collect(Collectors.joining("\n")));
          }
        }
        Thread.sleep(BEAT_MS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void answer(CountDownLatch done) {
    answered = System.nanoTime();
    screen = Thread.currentThread();
    long work = threads.getCurrentThreadCpuTime();
    mostWork.accumulateAndGet(work - workBefore, Math::max);
    workBefore = work;
    done.countDown();
  }

  /** Where the screen's thread is: the innermost call, and the calls of ours that led there. */
  private String doing() {
    StackTraceElement[] stack = screen.getStackTrace();
    String ours =
        Arrays.stream(stack)
            .filter(f -> f.getClassName().startsWith("org.underlee"))
            .limit(FRAMES)
            .map(f -> f.getFileName() + ":" + f.getLineNumber())
            .collect(Collectors.joining(" < "));
    String inner =
        stack.length == 0 ? "" : stack[0].getClassName() + "." + stack[0].getMethodName();
    return "      " + inner + " < " + ours;
  }

  /** What went on in the stalls since the last time. */
  List<String> told() {
    synchronized (told) {
      List<String> all = List.copyOf(told);
      told.clear();
      return all;
    }
  }

  /** The longest since the last time, milliseconds. */
  double longest() {
    return longest.getAndSet(0) / 1e6;
  }

  /** The most work of ours between two beats since the last time, milliseconds. */
  double mostWork() {
    return mostWork.getAndSet(0) / 1e6;
  }
}
