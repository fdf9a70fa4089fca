package org.underlee.framing;

import java.util.Locale;

/** What a member does in the deck, in the words of the trade. */
public enum Role {
  JOIST,
  /** A joist that a header ends on. */
  TRIMMER,
  LEDGER,
  RIM,
  DROP_BEAM,
  FLUSH_BEAM,
  HEADER,
  /** Level, between two joist lines: of the joists' full depth (solid bridging) or shallow. */
  BLOCKING,
  /** A strut from one joist's bottom to the next one's top. */
  BRIDGING,
  /** Holds a pair of joists a little apart. */
  PACKER,
  POST,
  GUARD_POST,
  /** Joins a joist's end to what carries it. */
  HANGER,
  /** Carries a flight of stairs up to the deck. */
  STRINGER,
  /** Carries boards and lies on a slab, or across joists. */
  SLEEPER,
  DECK_BOARD;

  /** Whether members of this role stand, and so may pass through a bay. */
  public boolean isUpright() {
    return this == POST || this == GUARD_POST;
  }

  /** The word used in files: {@code drop-beam}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
