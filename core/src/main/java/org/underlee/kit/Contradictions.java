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
  private Contradictions() {}

  /** The first contradiction, with both numbers and why they do not go together. */
  static Optional<String> of(Kit kit) {
    KitLimits limits = KitLimits.of(kit.family());
    return Stream.of(
            limits.pairs().stream().flatMap(p -> pair(kit, p).stream()),
            nominal(kit).stream(),
            limits.cutToLength().stream().flatMap(i -> notSoldByLength(kit, i).stream()),
            kit.stock().stream().flatMap(s -> withoutThickness(s).stream()),
            limits.onePiece().stream().flatMap(p -> tooShort(kit, p).stream()))
        .flatMap(s -> s)
        .findFirst();
  }

  private static Optional<String> pair(Kit kit, KitLimits.Pair pair) {
    return sum(kit, pair.smaller()) < sum(kit, pair.greater())
        ? Optional.empty()
        : Optional.of(
            words(kit, pair.smaller())
                + " is not less than "
                + words(kit, pair.greater())
                + ": "
                + pair.because());
  }

  /** Tables would say more of a pipe than it carries. */
  private static Optional<String> nominal(Kit kit) {
    double outside = kit.get(DrainValue.DOWNSPOUT_DIAMETER);
    return kit.find(DrainValue.DOWNSPOUT_NOMINAL).orElse(0) <= outside
        ? Optional.empty()
        : Optional.of(
            words(kit, List.of(DrainValue.DOWNSPOUT_NOMINAL))
                + " is more than "
                + words(kit, List.of(DrainValue.DOWNSPOUT_DIAMETER))
                + ": a downspout is called by no more than its outside");
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
  private static Optional<String> tooShort(Kit kit, KitLimits.OnePiece piece) {
    double longest =
        kit.item(piece.item()).stockLengths().stream().mapToDouble(l -> l).max().orElse(0);
    return sum(kit, piece.sum()) <= longest + KitNumber.MM
        ? Optional.empty()
        : Optional.of(
            words(kit, piece.sum())
                + " must be one piece, but item \""
                + piece.item()
                + "\" is sold in lengths of at most "
                + millimetres(longest)
                + " mm");
  }

  private static double sum(Kit kit, List<KitNumber> values) {
    return values.stream().mapToDouble(kit::get).sum();
  }

  private static String words(Kit kit, List<KitNumber> values) {
    return String.join(
        " plus ",
        values.stream()
            .map(v -> v.key() + " (" + millimetres(kit.get(v)) + ")")
            .toArray(String[]::new));
  }

  private static String millimetres(double metres) {
    String text = String.format(Locale.ROOT, "%.1f", metres / KitNumber.MM);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }
}
