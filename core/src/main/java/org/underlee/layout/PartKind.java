package org.underlee.layout;

import java.util.Locale;

/** The kinds of part that an assembly is made of, in the words of the trade. */
public enum PartKind {
  PAN,
  SIDE_RAIL,
  HEAD_RAIL,
  /** Over the heads of what falls to both sides of a high line. */
  RIDGE_CAP,
  PLY_STRIP,
  COLLAR_PIECE,
  /** Parts the water uphill of a pipe. */
  SADDLE,
  /** The trough of a bay, hung from the joist tops. */
  MEMBRANE,
  /** Covers a joist's top and the membranes' edges there. */
  CAP_STRIP,
  /** Ribbed sheet below all joists. */
  SHEET,
  BATTEN,
  BATTEN_HANGER,
  GUTTER,
  OUTLET,
  END_CAP,
  HANGER,
  /** Leads what falls behind a gutter into it. */
  FLASHING,
  DOWNSPOUT,
  ELBOW,
  STRAP,
  TAPE,
  FASTENER;

  /** Whether it catches the water of bays. */
  public boolean catchesWater() {
    return this == PAN || this == COLLAR_PIECE || this == MEMBRANE || this == SHEET;
  }

  /** As people say it: {@code side rail}. */
  public String spoken() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** The word used in files: {@code side-rail}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
