package org.underlee.kit;

import java.util.List;

/** The stock items that kits must offer, by id. */
public final class Items {
  public static final String PAN_SHEET = "pan-sheet";
  public static final String SIDE_RAIL = "side-rail";
  public static final String HEAD_RAIL = "head-rail";
  public static final String STRIP_SHEET = "strip-sheet";
  public static final String SEAM_TAPE = "seam-tape";
  public static final String MEMBRANE = "membrane";
  public static final String CAP_STRIP = "cap-strip";
  public static final String PROFILED_SHEET = "profiled-sheet";
  public static final String BATTEN = "batten";
  public static final String BATTEN_HANGER = "batten-hanger";
  public static final String FLASHING_SHEET = "flashing-sheet";
  public static final String GUTTER = "gutter";
  public static final String END_CAP = "gutter-end-cap";
  public static final String OUTLET = "gutter-outlet";
  public static final String HANGER = "gutter-hanger";
  public static final String DOWNSPOUT = "downspout";
  public static final String ELBOW = "downspout-elbow";
  public static final String STRAP = "downspout-strap";
  public static final String SCREW = "screw";

  /** What leads the water away, of every family. */
  static final List<String> OF_DRAIN =
      List.of(GUTTER, END_CAP, OUTLET, HANGER, DOWNSPOUT, ELBOW, STRAP, SCREW);

  static final List<String> OF_PANS =
      List.of(PAN_SHEET, SIDE_RAIL, HEAD_RAIL, STRIP_SHEET, SEAM_TAPE);

  static final List<String> OF_DRAPE = List.of(MEMBRANE, CAP_STRIP);

  static final List<String> OF_SHEET =
      List.of(PROFILED_SHEET, BATTEN, BATTEN_HANGER, FLASHING_SHEET);

  private Items() {}
}
