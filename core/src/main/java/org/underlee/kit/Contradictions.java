package org.underlee.kit;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Numbers of a kit that cannot hold together: each number is possible by itself, but no assembly
 * can be made with both. Found when the kit is read, so that no layout is begun with them.
 */
final class Contradictions {
  private static final double MM = 0.001;

  /** What must be the smaller, what must be the greater, and what to do when it is not so. */
  private record Pair(List<PanValue> smaller, List<PanValue> greater, String because) {
    static Pair of(PanValue smaller, PanValue greater, String because) {
      return new Pair(List.of(smaller), List.of(greater), because);
    }
  }

  private static final List<Pair> PAIRS =
      List.of(
          Pair.of(
              PanValue.PAN_NARROWEST,
              PanValue.PAN_WIDEST,
              "no bay is wide enough and narrow enough at once"),
          Pair.of(
              PanValue.PAN_LAP, PanValue.PAN_LONGEST, "a piece must be longer than its own lap"),
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
              PanValue.HEAD_GAP,
              PanValue.HEAD_RAIL_LIP,
              "the head rail's lip must reach over the pan's head"),
          new Pair(
              List.of(PanValue.RAIL_END_GAP, PanValue.PAN_DRIP_SETBACK),
              List.of(PanValue.GUTTER_BACK_GAP, PanValue.GUTTER_WIDTH),
              "the pans would end short of the gutter and drip in front of it"),
          Pair.of(
              PanValue.DOWNSPOUT_DIAMETER,
              PanValue.GUTTER_WIDTH,
              "the outlet must fit in the gutter's floor"));

  /** Items that are cut to length, so that a length to buy must be given. */
  private static final List<String> CUT =
      List.of(
          Items.PAN_SHEET,
          Items.SIDE_RAIL,
          Items.HEAD_RAIL,
          Items.STRIP_SHEET,
          Items.SEAM_TAPE,
          Items.GUTTER,
          Items.DOWNSPOUT);

  private Contradictions() {}

  /** The first contradiction, with both numbers and why they do not go together. */
  static Optional<String> of(Kit kit) {
    return Stream.of(
            PAIRS.stream().flatMap(p -> pair(kit, p).stream()),
            CUT.stream().flatMap(i -> notSoldByLength(kit, i).stream()),
            kit.stock().stream().flatMap(s -> withoutThickness(s).stream()),
            tooShort(kit))
        .flatMap(s -> s)
        .findFirst();
  }

  private static Optional<String> pair(Kit kit, Pair pair) {
    return sum(kit, pair.smaller) < sum(kit, pair.greater)
        ? Optional.empty()
        : Optional.of(
            words(kit, pair.smaller)
                + " is not less than "
                + words(kit, pair.greater)
                + ": "
                + pair.because);
  }

  private static Optional<String> notSoldByLength(Kit kit, String item) {
    return kit.item(item).isSoldByLength()
        ? Optional.empty()
        : Optional.of("item \"" + item + "\" is cut to length, but has no stock length");
  }

  /** Screws alone are counted and not drawn. */
  private static Optional<String> withoutThickness(StockItem item) {
    return item.thickness() > 0 || item.id().equals(Items.SCREW)
        ? Optional.empty()
        : Optional.of(
            "item \""
                + item.id()
                + "\" has thicknessMm "
                + millimetres(item.thickness())
                + ", but is made of sheet");
  }

  /** What must be one piece is not longer than what can be bought. */
  private static Stream<String> tooShort(Kit kit) {
    List<PanValue> pan = List.of(PanValue.PAN_LONGEST, PanValue.PAN_DRIP, PanValue.PAN_HEM);
    return Stream.of(
            tooShort(kit, Items.PAN_SHEET, pan),
            tooShort(kit, Items.STRIP_SHEET, pan),
            tooShort(kit, Items.HEAD_RAIL, List.of(PanValue.PAN_WIDEST)),
            tooShort(kit, Items.GUTTER, List.of(PanValue.GUTTER_LONGEST)))
        .flatMap(Optional::stream);
  }

  private static Optional<String> tooShort(Kit kit, String item, List<PanValue> piece) {
    double longest = kit.item(item).stockLengths().stream().mapToDouble(l -> l).max().orElse(0);
    return sum(kit, piece) <= longest + MM
        ? Optional.empty()
        : Optional.of(
            words(kit, piece)
                + " must be one piece, but item \""
                + item
                + "\" is sold in lengths of at most "
                + millimetres(longest)
                + " mm");
  }

  private static double sum(Kit kit, List<PanValue> values) {
    return values.stream().mapToDouble(kit::get).sum();
  }

  private static String words(Kit kit, List<PanValue> values) {
    return String.join(
        " plus ",
        values.stream()
            .map(v -> v.key() + " (" + millimetres(kit.get(v)) + ")")
            .toArray(String[]::new));
  }

  private static String millimetres(double metres) {
    String text = String.format(Locale.ROOT, "%.1f", metres / MM);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }
}
