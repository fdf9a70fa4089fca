package org.underlee.clash;

import java.util.Locale;

/** Why something is an issue, the gravest first. */
public enum Cause {
  /** A part fills the same space as another thing. */
  INTERSECT("runs into"),
  /** A part reaches into the room that a door or a window needs to swing. */
  SWING("reaches into the swing of"),
  /** A part hangs lower over a stair than a head needs. */
  HEADROOM("hangs low over"),
  /** The same body is there twice. */
  DUPLICATE("is there twice, with"),
  /** Something that must be reached ends above a pan. */
  HIDDEN("hides"),
  /** A part is nearer than the clearance. */
  TOO_NEAR("is too near to");

  private final String verb;

  Cause(String verb) {
    this.verb = verb;
  }

  /** What the part does to the other thing: {@code runs into}. */
  public String verb() {
    return verb;
  }

  /** The word used in files: {@code too-near}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
