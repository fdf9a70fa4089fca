package org.underlee.kit;

/** The numbers that a kit of the drape family has besides {@link DrainValue}s. */
public enum DrapeValue implements KitNumber {
  TROUGH_END_GAP(
      "troughEndGapMm", KitNumber.MM, "How far the trough stops short of the low-end line"),
  TROUGH_NARROWEST(
      "troughNarrowestMm", KitNumber.MM, "Narrowest bay that a trough can be hung and cleaned in"),
  TROUGH_WIDEST("troughWidestMm", KitNumber.MM, "Widest bay that a trough can hang in"),
  TROUGH_LEAST_DEPTH(
      "troughLeastDepthMm",
      KitNumber.MM,
      "Least depth of the edges of the trough below the joist tops"),
  TROUGH_SAG(
      "troughSagMm",
      KitNumber.MM,
      "How far the middle of the trough hangs below its edges where the bay is widest"),
  TROUGH_ABOVE_BOTTOM(
      "troughAboveBottomMm",
      KitNumber.MM,
      "Least height of the middle of the trough above the joist bottoms"),
  TROUGH_TAIL(
      "troughTailMm",
      KitNumber.MM,
      "Length of the tail that hangs down at the low end of the trough"),
  FLANGE(
      "flangeMm",
      KitNumber.MM,
      "How far the membrane lies over the top of a joist, at most half of it"),
  MEMBRANE_WIDTH(
      "membraneWidthMm", KitNumber.MM, "Width of the roll, the most that a trough is folded from"),
  CAP_OVERHANG(
      "capOverhangMm", KitNumber.MM, "How far the cap strip reaches over the trough, each side"),
  CAP_FASTENER_SPACING(
      "capFastenerSpacingMm", KitNumber.MM, "Greatest spacing of the screws of a cap strip");

  @SuppressWarnings("ImmutableEnumChecker") // a record of texts and a number
  private final Stated stated;

  DrapeValue(String key, double toSi, String meaning) {
    stated = new Stated(key, toSi, meaning);
  }

  @Override
  public Stated stated() {
    return stated;
  }
}
