package org.underlee.kit;

/** The numbers that a kit of the pans family has besides {@link DrainValue}s. */
public enum PanValue implements KitNumber {
  RAIL_LEG("railLegMm", KitNumber.MM, "Height of the side rail's fixing leg above the seat"),
  RAIL_LEDGE(
      "railLedgeMm", KitNumber.MM, "Width of the side rail's ledge that carries the pan edge"),
  RAIL_FASTENER_MARGIN(
      "railFastenerMarginMm",
      KitNumber.MM,
      "Least distance from a fastener to the leg's top edge or to the seat"),
  JOIST_EDGE_DISTANCE(
      "joistEdgeDistanceMm",
      KitNumber.MM,
      "Least height of a rail fastener above the joist bottom"),
  RAIL_FASTENER_SPACING(
      "railFastenerSpacingMm", KitNumber.MM, "Greatest spacing of rail fasteners"),
  RAIL_END_GAP("railEndGapMm", KitNumber.MM, "How much shorter than the clear run the rails are"),
  PAN_DRIP_SETBACK(
      "panDripSetbackMm", KitNumber.MM, "How far the pans stop short of the rails' low end"),
  PAN_SIDE_GAP(
      "panSideGapMm", KitNumber.MM, "Gap between the pan's edge and the joist face, each side"),
  PAN_HEM("panHemMm", KitNumber.MM, "Height of the pan's upturned edges"),
  PAN_DRIP("panDripMm", KitNumber.MM, "Depth of the drip bent down at the pan's low end"),
  PAN_NARROWEST(
      "panNarrowestMm", KitNumber.MM, "Narrowest bay that a pan can be formed and fixed in"),
  PAN_WIDEST("panWidestMm", KitNumber.MM, "Widest bay that a pan can span"),
  PAN_LONGEST("panLongestMm", KitNumber.MM, "Longest piece that can be formed"),
  PAN_LAP("panLapMm", KitNumber.MM, "How far an uphill piece lies over the next one"),
  NOTCH_CLEARANCE(
      "notchClearanceMm", KitNumber.MM, "Free width kept around what a rail leg is notched for"),
  LEG_ROOM(
      "legRoomMm",
      KitNumber.MM,
      "Least free width beside a rail leg to set and screw it, where something stands in the bay"),
  HEAD_RAIL_LEG("headRailLegMm", KitNumber.MM, "Height of the head rail's upper leg"),
  HEAD_RAIL_LEAST_LEG(
      "headRailLeastLegMm",
      KitNumber.MM,
      "Least height of the head rail's upper leg that can be fixed"),
  HEAD_RAIL_LIP(
      "headRailLipMm", KitNumber.MM, "How far the head rail's lower leg reaches over the pan"),
  STRIP_HEM("stripHemMm", KitNumber.MM, "Height of the ply strip's upturned edges"),
  STRIP_GAP(
      "stripGapMm", KitNumber.MM, "Free height between the ply strip's edges and the joist bottom"),
  TAPE_WIDTH("tapeWidthMm", KitNumber.MM, "Width of the seam tape"),
  COLLAR_LENGTH("collarLengthMm", KitNumber.MM, "Length of a collar piece at one pipe"),
  COLLAR_CLEARANCE(
      "collarClearanceMm", KitNumber.MM, "Gap between a pipe and the hole's edge, all round"),
  COLLAR_EDGE("collarEdgeMm", KitNumber.MM, "Least sheet left between the hole and the pan's edge");

  @SuppressWarnings("ImmutableEnumChecker") // a record of texts and a number
  private final Stated stated;

  PanValue(String key, double toSi, String meaning) {
    stated = new Stated(key, toSi, meaning);
  }

  @Override
  public Stated stated() {
    return stated;
  }
}
