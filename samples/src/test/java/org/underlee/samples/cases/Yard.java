package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.Frame;
import org.underlee.samples.Xyz;
import org.underlee.samples.cases.Piece.Kind;

/** Where cases of several fields are put together: the pieces so far, and the sizes they share. */
final class Yard {
  static final int GROUND = 0;
  static final int UPSTAIRS = 1;

  final Random random;
  final double w;
  final double d;
  final double top;
  final double spacing;
  final List<Piece> pieces = new ArrayList<>();

  Yard(Random random) {
    this.random = random;
    this.w = pick(38.1, 45, 60);
    this.d = pick(184.15, 235, 195);
    this.top = 2600 + random.nextInt(600);
    this.spacing = pick(304.8, 406.4, 500, 609.6);
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

  Yard add(String key, Kind kind, String role, int level, Body... bodies) {
    pieces.add(new Piece(key, kind, role, level, List.of(bodies)));
    return this;
  }

  Yard wall(String key, double x0, double y0, double x1, double y1, double z0, double z1) {
    return add(key, Kind.WALL, "none", UPSTAIRS, Shapes.box(2, x0, y0, z0, x1, y1, z1));
  }

  Yard slab(String key, double x0, double y0, double x1, double y1, double z0, double z1) {
    return add(key, Kind.SLAB, "none", UPSTAIRS, Shapes.box(2, x0, y0, z0, x1, y1, z1));
  }

  /** A field's own place: v along the fall from the face at the high end, u to the right. */
  Plot plot(String key, double x, double y, Xyz fall) {
    return new Plot(this, key, Frame.of(new Xyz(x, y, 0), fall.cross(Xyz.Z), fall));
  }

  FramingCase.Model model(Truth.Deck... decks) {
    return new FramingCase.Model(2, pieces, new Truth(List.of(decks)));
  }
}
