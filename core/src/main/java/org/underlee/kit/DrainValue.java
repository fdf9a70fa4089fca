package org.underlee.kit;

/**
 * The numbers of every kit, whatever catches the water: its fall, and how the gutter and downspouts
 * lead it away.
 */
public enum DrainValue implements KitNumber {
  RUN_PER_FALL(
      "runPerFall", 1, "Run for one unit of fall of pans, rails and strips: 96 is 1/8 in per ft"),
  GUTTER_RUN_PER_FALL(
      "gutterRunPerFall", 1, "Run for one unit of fall of the gutter: 192 is 1/16 in per ft"),
  HEAD_GAP("headGapMm", KitNumber.MM, "Gap between what bounds the high end and the pan's head"),
  CLEARANCE_ABOVE(
      "clearanceAboveMm",
      KitNumber.MM,
      "Free height kept above the pan's edges under anything that crosses"),
  GUTTER_WIDTH("gutterWidthMm", KitNumber.MM, "Outside width of the gutter"),
  GUTTER_DEPTH("gutterDepthMm", KitNumber.MM, "Outside depth of the gutter"),
  GUTTER_BACK_GAP(
      "gutterBackGapMm", KitNumber.MM, "Air gap between the gutter and the face behind it"),
  GUTTER_LONGEST(
      "gutterLongestMm", KitNumber.MM, "Longest stretch of gutter that one outlet serves"),
  DRIP_CLEARANCE(
      "dripClearanceMm", KitNumber.MM, "Height from the gutter's rim up to the lowest drip"),
  HANGER_END("hangerEndMm", KitNumber.MM, "From a gutter end to its first hanger"),
  HANGER_SPACING("hangerSpacingMm", KitNumber.MM, "Greatest spacing of gutter hangers"),
  DOWNSPOUT_DIAMETER("downspoutDiameterMm", KitNumber.MM, "Outside diameter of the downspout"),
  DOWNSPOUT_NOMINAL(
      "downspoutNominalMm",
      KitNumber.MM,
      "Size that the downspout is called by, at which tables of codes are read; may be left out"),
  DOWNSPOUT_OFF_POST(
      "downspoutOffPostMm", KitNumber.MM, "Gap between the downspout and a post's face"),
  STRAP_SPACING("strapSpacingMm", KitNumber.MM, "Greatest spacing of the straps of a downspout"),
  SCREW_LENGTH("screwLengthMm", KitNumber.MM, "Length of the screws, under their head"),
  DISCHARGE_HEIGHT(
      "dischargeHeightMm", KitNumber.MM, "Height of the downspout's foot above the ground"),
  FLASHING_OVER(
      "flashingOverMm",
      KitNumber.MM,
      "How far the flashing behind the gutter reaches in over the gutter's back edge"),
  FLASHING_UNDER(
      "flashingUnderMm", KitNumber.MM, "How far the flashing reaches under a face that ends above"),
  FLASHING_LEG(
      "flashingLegMm",
      KitNumber.MM,
      "Height of the flashing's back against a face, where there is room"),
  FLASHING_DAM("flashingDamMm", KitNumber.MM, "Height of the flashing's back under a face"),
  FLASHING_RUN_PER_FALL(
      "flashingRunPerFall", 1, "Run for one unit of fall of the flashing to the gutter"),
  FLASHING_LAP(
      "flashingLapMm", KitNumber.MM, "How far an uphill piece of flashing lies over the next one"),
  LEAST_HEADROOM("leastHeadroomMm", KitNumber.MM, "Headroom below which a warning is given");

  @SuppressWarnings("ImmutableEnumChecker") // a record of texts and a number
  private final Stated stated;

  DrainValue(String key, double toSi, String meaning) {
    stated = new Stated(key, toSi, meaning);
  }

  @Override
  public Stated stated() {
    return stated;
  }

  @Override
  public boolean isOptional() {
    return this == DOWNSPOUT_NOMINAL;
  }
}
