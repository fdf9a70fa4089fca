package org.underlee.panel.model;

import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;
import org.underlee.finding.StopSign;

/**
 * A thread for one job after the other, each of which ends soon after nobody waits for it. It is
 * less urgent than the screen's thread, and so are the threads that its jobs start, which Java
 * makes as urgent as the one that starts them. See decision 0021.
 */
final class JobThread extends Thread implements StopSign.Stoppable {
  private volatile BooleanSupplier wanted = () -> true;

  @SuppressWarnings("ThreadPriorityCheck") // nothing is right or wrong by it, only sooner seen
  JobThread(Runnable jobs, String name) {
    super(jobs, name);
    setDaemon(true);
    setPriority(MIN_PRIORITY);
  }

  @Override
  public boolean isStopped() {
    return !wanted.getAsBoolean();
  }

  /**
   * Does a job in the thread that this is called in.
   *
   * @param isWanted whether anyone waits for it; asked often and by several threads
   * @throws org.underlee.finding.StoppedException when it was given up
   */
  static <T> T call(Callable<T> job, BooleanSupplier isWanted) throws Exception {
    if (Thread.currentThread() instanceof JobThread own) {
      own.wanted = isWanted;
    }
    return job.call();
  }
}
