package org.underlee.kit;

import java.util.Arrays;
import java.util.Optional;

/**
 * The numbers that a kit of the pans family is described by. The key ends with the unit; the factor
 * takes it to SI.
 */
public enum PanValue {
  RUN_PER_FALL(
      "runPerFall", 1, "Run for one unit of fall of pans, rails and strips: 96 is 1/8 in per ft"),
  GUTTER_RUN_PER_FALL(
      "gutterRunPerFall", 1, "Run for one unit of fall of the gutter: 192 is 1/16 in per ft"),
  RAIL_LEG("railLegMm", Unit.MM, "Height of the side rail's fixing leg above the seat"),
  RAIL_LEDGE("railLedgeMm", Unit.MM, "Width of the side rail's ledge that carries the pan edge"),
  RAIL_FASTENER_MARGIN(
      "railFastenerMarginMm",
      Unit.MM,
      "Least distance from a fastener to the leg's top edge or to the seat"),
  JOIST_EDGE_DISTANCE(
      "joistEdgeDistanceMm", Unit.MM, "Least height of a rail fastener above the joist bottom"),
  RAIL_FASTENER_SPACING("railFastenerSpacingMm", Unit.MM, "Greatest spacing of rail fasteners"),
  RAIL_END_GAP("railEndGapMm", Unit.MM, "How much shorter than the clear run the rails are"),
  PAN_DRIP_SETBACK(
      "panDripSetbackMm", Unit.MM, "How far the pans stop short of the rails' low end"),
  HEAD_GAP("headGapMm", Unit.MM, "Gap between what bounds the high end and the pan's head"),
  PAN_SIDE_GAP("panSideGapMm", Unit.MM, "Gap between the pan's edge and the joist face, each side"),
  PAN_HEM("panHemMm", Unit.MM, "Height of the pan's upturned edges"),
  PAN_DRIP("panDripMm", Unit.MM, "Depth of the drip bent down at the pan's low end"),
  PAN_NARROWEST("panNarrowestMm", Unit.MM, "Narrowest bay that a pan can be formed and fixed in"),
  PAN_WIDEST("panWidestMm", Unit.MM, "Widest bay that a pan can span"),
  PAN_LONGEST("panLongestMm", Unit.MM, "Longest piece that can be formed"),
  PAN_LAP("panLapMm", Unit.MM, "How far an uphill piece lies over the next one"),
  CLEARANCE_ABOVE(
      "clearanceAboveMm",
      Unit.MM,
      "Free height kept above the pan's edges under anything that crosses"),
  NOTCH_CLEARANCE(
      "notchClearanceMm", Unit.MM, "Free width kept around what a rail leg is notched for"),
  HEAD_RAIL_LEG("headRailLegMm", Unit.MM, "Height of the head rail's upper leg"),
  HEAD_RAIL_LEAST_LEG(
      "headRailLeastLegMm", Unit.MM, "Least height of the head rail's upper leg that can be fixed"),
  HEAD_RAIL_LIP("headRailLipMm", Unit.MM, "How far the head rail's lower leg reaches over the pan"),
  STRIP_HEM("stripHemMm", Unit.MM, "Height of the ply strip's upturned edges"),
  STRIP_GAP(
      "stripGapMm", Unit.MM, "Free height between the ply strip's edges and the joist bottom"),
  TAPE_WIDTH("tapeWidthMm", Unit.MM, "Width of the seam tape"),
  COLLAR_LENGTH("collarLengthMm", Unit.MM, "Length of a collar piece at one pipe"),
  COLLAR_CLEARANCE(
      "collarClearanceMm", Unit.MM, "Gap between a pipe and the hole's edge, all round"),
  COLLAR_EDGE("collarEdgeMm", Unit.MM, "Least sheet left between the hole and the pan's edge"),
  GUTTER_WIDTH("gutterWidthMm", Unit.MM, "Outside width of the gutter"),
  GUTTER_DEPTH("gutterDepthMm", Unit.MM, "Outside depth of the gutter"),
  GUTTER_BACK_GAP("gutterBackGapMm", Unit.MM, "Air gap between the gutter and the face behind it"),
  GUTTER_LONGEST("gutterLongestMm", Unit.MM, "Longest stretch of gutter that one outlet serves"),
  DRIP_CLEARANCE("dripClearanceMm", Unit.MM, "Height from the gutter's rim up to the lowest drip"),
  HANGER_END("hangerEndMm", Unit.MM, "From a gutter end to its first hanger"),
  HANGER_SPACING("hangerSpacingMm", Unit.MM, "Greatest spacing of gutter hangers"),
  DOWNSPOUT_DIAMETER("downspoutDiameterMm", Unit.MM, "Outside diameter of the downspout"),
  DOWNSPOUT_OFF_POST("downspoutOffPostMm", Unit.MM, "Gap between the downspout and a post's face"),
  STRAP_SPACING("strapSpacingMm", Unit.MM, "Greatest spacing of the straps of a downspout"),
  SCREW_LENGTH("screwLengthMm", Unit.MM, "Length of the screws, under their head"),
  DISCHARGE_HEIGHT("dischargeHeightMm", Unit.MM, "Height of the downspout's foot above the ground"),
  LEAST_HEADROOM("leastHeadroomMm", Unit.MM, "Headroom below which a warning is given");

  private static final class Unit {
    private static final double MM = 0.001;
  }

  private final String key;
  private final double toSi;
  private final String meaning;

  PanValue(String key, double toSi, String meaning) {
    this.key = key;
    this.toSi = toSi;
    this.meaning = meaning;
  }

  /** The name in a kit file. */
  public String key() {
    return key;
  }

  public String meaning() {
    return meaning;
  }

  double toSi(double value) {
    return value * toSi;
  }

  static Optional<PanValue> named(String key) {
    return Arrays.stream(values()).filter(v -> v.key.equals(key)).findFirst();
  }
}
