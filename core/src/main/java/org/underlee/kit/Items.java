package org.underlee.kit;

import java.util.List;

/** The stock items that kits must offer, by id. */
public final class Items {
  public static final String PAN_SHEET = "pan-sheet";
  public static final String SIDE_RAIL = "side-rail";
  public static final String HEAD_RAIL = "head-rail";
  public static final String STRIP_SHEET = "strip-sheet";
  public static final String SEAM_TAPE = "seam-tape";
  public static final String GUTTER = "gutter";
  public static final String END_CAP = "gutter-end-cap";
  public static final String OUTLET = "gutter-outlet";
  public static final String HANGER = "gutter-hanger";
  public static final String DOWNSPOUT = "downspout";
  public static final String SHOE = "downspout-shoe";
  public static final String STRAP = "downspout-strap";
  public static final String SCREW = "screw";

  /** What leads the water away, of every family. */
  static final List<String> OF_DRAIN =
      List.of(GUTTER, END_CAP, OUTLET, HANGER, DOWNSPOUT, SHOE, STRAP, SCREW);

  static final List<String> OF_PANS =
      List.of(PAN_SHEET, SIDE_RAIL, HEAD_RAIL, STRIP_SHEET, SEAM_TAPE);

  private Items() {}
}
