package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.underlee.samples.Xyz;
import org.underlee.samples.cases.Piece.Kind;

/**
 * A ledger on the house wall, joists, a rim on two posts, sometimes boards: what most cases start
 * from. The house is at v &lt; 0; v runs from the ledger's face to the rim's, {@link #run} away.
 */
final class SimpleDeck {
  static final int GROUND = 0;
  static final int UPSTAIRS = 1;

  private static final double BOARD = 25;
  private static final double BOARD_WIDTH = 140;

  /** The bar's width and depth of joists, ledger and rim. */
  final double w;

  final double d;
  final double run;
  final double top;

  /** Left faces of the joists, in order. */
  final double[] u;

  final List<Piece> pieces = new ArrayList<>();
  final Random random;

  SimpleDeck(Random random, int lines) {
    this.random = random;
    this.w = pick(38.1, 45, 60, 36);
    this.d = pick(184.15, 235, 195, 160);
    this.run = 2000 + random.nextInt(2500);
    this.top = 2600 + random.nextInt(600);
    this.u = new double[lines];
    double spacing = pick(304.8, 406.4, 500, 609.6);
    for (int i = 1; i < lines; i++) {
      u[i] = u[i - 1] + spacing;
    }
  }

  static SimpleDeck any(Random random) {
    return new SimpleDeck(random, 4 + random.nextInt(5));
  }

  double pick(double... values) {
    return values[random.nextInt(values.length)];
  }

  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  double bottom() {
    return top - d;
  }

  double last() {
    return u[u.length - 1] + w;
  }

  Body box(double u0, double v0, double z0, double u1, double v1, double z1) {
    return Shapes.box(random.nextInt(3), u0, v0, z0, u1, v1, z1);
  }

  SimpleDeck piece(String key, Kind kind, String role, Body... bodies) {
    pieces.add(new Piece(key, kind, role, UPSTAIRS, List.of(bodies)));
    return this;
  }

  SimpleDeck joist(String key, Body... bodies) {
    return piece(key, Kind.BAR, "joist", bodies);
  }

  /** A joist of the deck's own section. */
  SimpleDeck joist(String key, double left, double from, double to) {
    return joist(key, box(left, from, bottom(), left + w, to, top));
  }

  static String name(int i) {
    return "j" + (i + 1);
  }

  /** All joists in their places. */
  SimpleDeck joists() {
    for (int i = 0; i < u.length; i++) {
      joist(name(i), u[i], 0, run);
    }
    return this;
  }

  /** Ledger, wall, rim and posts, reaching {@code over} past the outer joists. */
  SimpleDeck held(double over) {
    double from = u[0] - over;
    double to = last() + over;
    piece("ledger", Kind.BAR, "ledger", box(from, -w, bottom(), to, 0, top));
    piece("rim", Kind.BAR, "rim", box(from, run, bottom(), to, run + w, top));
    pieces.add(
        new Piece(
            "wall",
            Kind.WALL,
            "none",
            UPSTAIRS,
            List.of(box(from - 1500, -w - 200, 0, to + 1500, -w, top + 2400))));
    double middle = run + w / 2;
    for (double at : new double[] {from + 150, to - 150}) {
      pieces.add(
          new Piece(
              "post-" + (at < (from + to) / 2 ? 1 : 2),
              Kind.UPRIGHT,
              "post",
              GROUND,
              List.of(box(at - 45, middle - 45, 0, at + 45, middle + 45, bottom()))));
    }
    return random.nextInt(3) == 0 ? boards(from, to) : this;
  }

  private SimpleDeck boards(double from, double to) {
    int n = 0;
    for (double v = 0; v + BOARD_WIDTH <= run; v += BOARD_WIDTH + 6) {
      piece(
          "board-" + ++n,
          Kind.BOARD,
          "deck-board",
          box(from, v, top, to, v + BOARD_WIDTH, top + BOARD));
    }
    return this;
  }

  static Map<String, List<String>> supports() {
    return Map.of(
        "ledgers", List.of("ledger"),
        "rims", List.of("rim"),
        "posts", List.of("post-1", "post-2"),
        "beams", List.of(),
        "headers", List.of(),
        "trimmers", List.of());
  }

  /** Single joists of the deck's own section. */
  List<Truth.Line> lines() {
    List<Truth.Line> lines = new ArrayList<>();
    for (int i = 0; i < u.length; i++) {
      lines.add(new Truth.Line(List.of(name(i)), 1, w, d));
    }
    return lines;
  }

  /** Plain bays between joists in their places. */
  List<Truth.Bay> bays() {
    List<Truth.Bay> bays = new ArrayList<>();
    for (int i = 0; i + 1 < u.length; i++) {
      bays.add(Truth.Bay.plain(i, i + 1, run, u[i + 1] - u[i] - w));
    }
    return bays;
  }

  FramingCase.Model model(List<Truth.Line> lines, List<Truth.Bay> bays) {
    Truth.Field field = new Truth.Field(Xyz.Y, lines, supports(), bays);
    return new FramingCase.Model(
        2, pieces, new Truth(List.of(new Truth.Deck(true, List.of(field)))));
  }
}
