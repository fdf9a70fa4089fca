package org.underlee.finding;

/**
 * Tells work that takes long whether it is still wanted. Whoever may want to stop it does it in a
 * thread that is {@link Stoppable}; in any other the work goes on to its end. A sign is taken in
 * that thread, before work is shared out, and may then be looked at by all who share it.
 *
 * <p>Not told by interrupts: a thread that waits for its helpers takes those off meanwhile, and
 * they close files that are being written.
 */
public final class StopSign {
  /** A thread whose work can be stopped. */
  public interface Stoppable {
    /** Whether what it does now is no longer wanted; asked by all who help it. */
    boolean isStopped();
  }

  private final Stoppable asker;

  private StopSign(Stoppable asker) {
    this.asker = asker;
  }

  /** The sign of the thread that asks. */
  public static StopSign here() {
    return new StopSign(Thread.currentThread() instanceof Stoppable s ? s : () -> false);
  }

  /**
   * Ends what is no longer wanted.
   *
   * @throws StoppedException when it is not
   */
  public void obey() {
    if (asker.isStopped()) {
      throw new StoppedException();
    }
  }
}
