package org.underlee.framing;

import java.util.Locale;

/** What a member does in the deck, in the words of the trade. */
public enum Role {
  JOIST,
  LEDGER,
  RIM,
  DROP_BEAM,
  FLUSH_BEAM,
  HEADER,
  BLOCKING,
  POST,
  GUARD_POST,
  DECK_BOARD;

  /** The word used in files: {@code drop-beam}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
