package org.underlee.kit;

import java.util.List;
import java.util.stream.Stream;

/**
 * What must hold between the numbers of a kit, so that something can be made with it.
 *
 * @param pairs what must be less than what
 * @param cutToLength items for which a length to buy must be given
 * @param onePiece what is made in one piece, so no longer than what can be bought
 */
record KitLimits(List<Pair> pairs, List<String> cutToLength, List<OnePiece> onePiece) {

  /** The sum that must be the smaller, the sum that must be the greater, and why. */
  record Pair(List<KitNumber> smaller, List<KitNumber> greater, String because) {
    static Pair of(KitNumber smaller, KitNumber greater, String because) {
      return new Pair(List.of(smaller), List.of(greater), because);
    }
  }

  /** A sum of numbers that is cut from one length of an item. */
  record OnePiece(String item, List<KitNumber> sum) {}

  private static final KitLimits DRAIN =
      new KitLimits(
          List.of(
              Pair.of(
                  DrainValue.DOWNSPOUT_DIAMETER,
                  DrainValue.GUTTER_WIDTH,
                  "the outlet must fit in the gutter's floor"),
              Pair.of(
                  DrainValue.FLASHING_OVER,
                  DrainValue.GUTTER_WIDTH,
                  "the flashing behind the gutter would drip in front of it")),
          List.of(Items.GUTTER, Items.DOWNSPOUT),
          List.of(new OnePiece(Items.GUTTER, List.of(DrainValue.GUTTER_LONGEST))));

  private static final List<KitNumber> LONGEST_PAN =
      List.of(PanValue.PAN_LONGEST, PanValue.PAN_DRIP, PanValue.PAN_HEM);

  private static final KitLimits PANS =
      new KitLimits(
          List.of(
              Pair.of(
                  PanValue.PAN_NARROWEST,
                  PanValue.PAN_WIDEST,
                  "no bay is wide enough and narrow enough at once"),
              Pair.of(
                  PanValue.PAN_LAP,
                  PanValue.PAN_LONGEST,
                  "a piece must be longer than its own lap"),
              Pair.of(
                  PanValue.COLLAR_LENGTH,
                  PanValue.PAN_LONGEST,
                  "a collar piece must be short enough to form"),
              new Pair(
                  List.of(PanValue.RAIL_FASTENER_MARGIN, PanValue.RAIL_FASTENER_MARGIN),
                  List.of(PanValue.RAIL_LEG),
                  "no height of the leg is left for a fastener"),
              Pair.of(
                  PanValue.PAN_SIDE_GAP,
                  PanValue.RAIL_LEDGE,
                  "the pan's edge must still bear on the ledge"),
              new Pair(
                  List.of(PanValue.RAIL_LEDGE, PanValue.RAIL_LEDGE),
                  List.of(PanValue.PAN_NARROWEST),
                  "the two ledges meet in the narrowest bay"),
              Pair.of(
                  PanValue.HEAD_RAIL_LEAST_LEG,
                  PanValue.HEAD_RAIL_LEG,
                  "the head rail as made is too low to be fixed"),
              Pair.of(
                  DrainValue.HEAD_GAP,
                  PanValue.HEAD_RAIL_LIP,
                  "the head rail's lip must reach over the pan's head"),
              new Pair(
                  List.of(PanValue.RAIL_END_GAP, PanValue.PAN_DRIP_SETBACK),
                  List.of(DrainValue.GUTTER_BACK_GAP, DrainValue.GUTTER_WIDTH),
                  "the pans would end short of the gutter and drip in front of it")),
          List.of(
              Items.PAN_SHEET,
              Items.SIDE_RAIL,
              Items.HEAD_RAIL,
              Items.STRIP_SHEET,
              Items.SEAM_TAPE),
          List.of(
              new OnePiece(Items.PAN_SHEET, LONGEST_PAN),
              new OnePiece(Items.STRIP_SHEET, LONGEST_PAN),
              new OnePiece(Items.HEAD_RAIL, List.of(PanValue.PAN_WIDEST))));

  private static final KitLimits DRAPE =
      new KitLimits(
          List.of(
              Pair.of(
                  DrapeValue.TROUGH_NARROWEST,
                  DrapeValue.TROUGH_WIDEST,
                  "no bay is wide enough and narrow enough at once"),
              new Pair(
                  List.of(
                      DrapeValue.TROUGH_WIDEST,
                      DrapeValue.TROUGH_LEAST_DEPTH,
                      DrapeValue.TROUGH_LEAST_DEPTH,
                      DrapeValue.FLANGE,
                      DrapeValue.FLANGE),
                  List.of(DrapeValue.MEMBRANE_WIDTH),
                  "the roll is too narrow for a trough in the widest bay"),
              Pair.of(
                  DrainValue.HEAD_GAP,
                  DrapeValue.TROUGH_END_GAP,
                  "the trough would end beyond the low-end line"),
              Pair.of(
                  DrapeValue.TROUGH_END_GAP,
                  DrainValue.GUTTER_WIDTH,
                  "the troughs would end short of the gutter and drip in front of it"),
              new Pair(
                  List.of(DrapeValue.CAP_OVERHANG, DrapeValue.CAP_OVERHANG),
                  List.of(DrapeValue.TROUGH_NARROWEST),
                  "two cap strips meet over the narrowest bay")),
          List.of(Items.MEMBRANE, Items.CAP_STRIP),
          List.of());

  private static final KitLimits SHEET =
      new KitLimits(
          List.of(
              new Pair(
                  List.of(SheetValue.SHEET_CREST, SheetValue.SHEET_WEB, SheetValue.SHEET_WEB),
                  List.of(SheetValue.SHEET_PITCH),
                  "no width is left between two ribs for water"),
              Pair.of(
                  SheetValue.SHEET_PITCH,
                  SheetValue.SHEET_COVER,
                  "a sheet has at least two ribs, to lap at both sides"),
              Pair.of(
                  SheetValue.SHEET_LAP,
                  SheetValue.SHEET_LONGEST,
                  "a sheet must be longer than its own lap"),
              Pair.of(
                  DrainValue.HEAD_GAP,
                  SheetValue.SHEET_END_GAP,
                  "the sheets would end beyond the low-end line"),
              Pair.of(
                  SheetValue.SHEET_END_GAP,
                  DrainValue.GUTTER_WIDTH,
                  "the sheets would end short of the gutter and drip in front of it"),
              Pair.of(
                  SheetValue.BATTEN_WIDTH,
                  SheetValue.BATTEN_SPACING,
                  "battens would touch each other"),
              Pair.of(
                  SheetValue.BATTEN_HANGER_GRIP,
                  SheetValue.BATTEN_HANGER_LONGEST,
                  "no hanger reaches from a joist's side down to a batten")),
          List.of(Items.PROFILED_SHEET, Items.BATTEN, Items.FLASHING_SHEET),
          List.of(new OnePiece(Items.PROFILED_SHEET, List.of(SheetValue.SHEET_LONGEST))));

  /** What holds for every kit of a family. */
  static KitLimits of(Family family) {
    return switch (family) {
      case PANS -> PANS.and(DRAIN);
      case DRAPE -> DRAPE.and(DRAIN);
      case SHEET -> SHEET.and(DRAIN);
    };
  }

  private KitLimits and(KitLimits more) {
    return new KitLimits(
        join(pairs, more.pairs),
        join(cutToLength, more.cutToLength),
        join(onePiece, more.onePiece));
  }

  private static <T> List<T> join(List<T> a, List<T> b) {
    return Stream.concat(a.stream(), b.stream()).toList();
  }
}
