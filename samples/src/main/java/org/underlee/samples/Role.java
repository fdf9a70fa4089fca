package org.underlee.samples;

/** What a member of a sample is for, in the words of the survey. */
public enum Role {
  JOIST("joist", true),
  LEDGER("ledger", true),
  RIM("rim", true),
  BEAM("beam", true),
  POST("post", true),
  BLOCKING("blocking", true),
  DECK_BOARD("deck-board", false),
  GUARD("guard", false),
  TREAD("tread", false),
  WALL("wall", false),
  SLAB("slab", false),
  FOOTING("footing", false),
  PIPE("service", false);

  private final String word;
  private final boolean framing;

  Role(String word, boolean framing) {
    this.word = word;
    this.framing = framing;
  }

  public String word() {
    return word;
  }

  /** Whether it carries the deck. */
  public boolean isFraming() {
    return framing;
  }
}
