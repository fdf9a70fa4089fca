package org.underlee.misbuilt.run;

/** Not a record of what came out of a run. */
public final class DeckRun {
  private DeckRun() {}
}
