package org.underlee.kit;

/** The numbers that a kit of the sheet family has besides {@link DrainValue}s. */
public enum SheetValue implements KitNumber {
  SHEET_END_GAP("sheetEndGapMm", KitNumber.MM, "How far the sheets stop short of the low-end line"),
  SHEET_COVER(
      "sheetCoverMm", KitNumber.MM, "Width that one sheet covers, a whole number of pitches"),
  SHEET_PITCH("sheetPitchMm", KitNumber.MM, "From one rib of a sheet to the next"),
  SHEET_CREST(
      "sheetCrestMm",
      KitNumber.MM,
      "Width of the top of a rib, likewise the lap at the side of a sheet"),
  SHEET_WEB("sheetWebMm", KitNumber.MM, "Level width of the side of a rib"),
  SHEET_DEPTH("sheetDepthMm", KitNumber.MM, "Height of the ribs"),
  SHEET_LONGEST(
      "sheetLongestMm",
      KitNumber.MM,
      "Longest sheet that is handled below a deck, its lap included"),
  SHEET_LAP("sheetLapMm", KitNumber.MM, "How far an uphill sheet lies over the next one"),
  SHEET_SCREW_SPACING(
      "sheetScrewSpacingMm",
      KitNumber.MM,
      "Greatest spacing of the screws of sheets along a batten"),
  BATTEN_WIDTH("battenWidthMm", KitNumber.MM, "Width of a batten along the fall"),
  BATTEN_DEPTH("battenDepthMm", KitNumber.MM, "Height of a batten"),
  BATTEN_END(
      "battenEndMm", KitNumber.MM, "From the end of the sheets to the middle of the first batten"),
  BATTEN_SPACING(
      "battenSpacingMm", KitNumber.MM, "Greatest spacing of battens, what a sheet spans"),
  BATTEN_SPAN("battenSpanMm", KitNumber.MM, "Greatest spacing of the hangers of a batten"),
  BATTEN_HANGER_GRIP(
      "battenHangerGripMm", KitNumber.MM, "How far a hanger reaches up the side of a joist"),
  BATTEN_HANGER_LONGEST(
      "battenHangerLongestMm", KitNumber.MM, "Longest hanger, from the batten up to its top"),
  BATTEN_HANGER_WIDTH(
      "battenHangerWidthMm", KitNumber.MM, "Width of the strap of a hanger, likewise of its foot");

  @SuppressWarnings("ImmutableEnumChecker") // a record of texts and a number
  private final Stated stated;

  SheetValue(String key, double toSi, String meaning) {
    stated = new Stated(key, toSi, meaning);
  }

  @Override
  public Stated stated() {
    return stated;
  }
}
