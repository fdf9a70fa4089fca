package org.underlee.server;

/** A revision of someone else has come that the file to check in knows nothing of. */
public final class Overtaken extends ServerException {
  private static final long serialVersionUID = 1;

  private final transient Revision newer;
  private final transient Revision top;

  Overtaken(Revision newer, Revision top, String message, String advice) {
    super(message, advice);
    this.newer = newer;
    this.top = top;
  }

  /** The revision that is not in the file. */
  Revision newer() {
    return newer;
  }

  /**
   * The newest revision of the project, on which the next one lands: the same as {@link #newer},
   * but ours where both came in one moment.
   */
  Revision top() {
    return top;
  }
}
