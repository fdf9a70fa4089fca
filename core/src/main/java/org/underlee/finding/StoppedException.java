package org.underlee.finding;

/** Work was ended because nobody waits for it any more; see {@link StopSign}. */
public final class StoppedException extends RuntimeException {
  private static final long serialVersionUID = 1;

  public StoppedException() {
    super("nobody waits for this any more");
  }
}
