package org.underlee.drainage;

import java.util.Locale;

/** Why water gets through, with what to do about it. */
public enum LeakCause {
  OPEN_BAY(
      "nothing is hung in this bay",
      "See why the bay is left open; close it above, or drain it on its own."),
  BEYOND_GUTTER(
      "the deck goes on beyond the gutter, where nothing is hung",
      "Keep what must stay dry on the house side of the gutter, or run the pans on to the rim."),
  BEHIND_GUTTER(
      "rain falls between the gutter and the face behind it",
      "Flash the face over the gutter's back edge."),
  GAP("rain falls through a gap between parts", "Lap the parts, or close the gap with a flashing."),
  JOIST_FACE(
      "water on a joist runs down where nothing catches it",
      "Carry the rail on over the place, or tape the joist's top there."),
  PLY_SEAM(
      "water runs through the seam between two plies",
      "Hang a strip under the line; tape alone is a second line and not counted on."),
  EDGE("water runs off an edge with nothing below", "Carry the part on to over what it drains to."),
  SHORT_LAP(
      "a part reaches too little over the one that it drains to",
      "Lengthen the lap, or move the parts together."),
  REVERSED_LAP(
      "a part lies over the one uphill of it, and the water runs between them",
      "Lay the uphill part over the downhill one."),
  BACK_FALL("a part falls the wrong way", "Set the part so that it falls to the gutter."),
  OPEN_HOLE("water runs through a hole", "Close and seal the collar around the pipe."),
  SPILL("water stands and spills over an edge", "Give the part its fall, or open its way out."),
  NO_DOWNSPOUT("the outlet leads to no downspout", "Set the downspout below the outlet."),
  SHORT_DOWNSPOUT(
      "the downspout ends high above the ground", "Lead the downspout down to the ground.");

  private final String why;
  private final String fix;

  LeakCause(String why, String fix) {
    this.why = why;
    this.fix = fix;
  }

  /** In plain words. */
  public String why() {
    return why;
  }

  public String fix() {
    return fix;
  }

  /** Whether it is open deck, where no part fails. */
  public boolean isOpenDeck() {
    return this == OPEN_BAY || this == BEYOND_GUTTER;
  }

  /** The word used in files: {@code short-lap}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
