package org.underlee.panel.model;

/**
 * Makes something as long as someone looks at it. What is asked for meanwhile is made once, when it
 * is looked at again.
 */
final class WhenWanted {
  /** How it is made. */
  interface Making {
    /**
     * Makes it.
     *
     * @param fit whether it is of another subject, to be seen as a whole
     */
    void make(boolean fit);
  }

  private final Making making;
  private boolean wanted = true;
  private boolean due;
  private boolean fit;

  WhenWanted(Making making) {
    this.making = making;
  }

  void ask(boolean toFit) {
    due = true;
    fit |= toFit;
    makeWhatIsDue();
  }

  void want(boolean now) {
    wanted = now;
    makeWhatIsDue();
  }

  private void makeWhatIsDue() {
    if (wanted && due) {
      boolean toFit = fit;
      due = false;
      fit = false;
      making.make(toFit);
    }
  }
}
