package org.underlee.picture;

import java.util.List;

/** The colours of one picture, by shape: worked out once, and not for each face and line. */
final class ShapeColours {
  /** How much darker than its surface a line is on a solid shape, and on a faded one. */
  private static final double INK = 0.3;

  private static final double FADED_INK = 0.55;

  /** Lines of context are a little stronger than its surfaces, or they would be lost. */
  private static final double STRONGER = 1.6;

  private final List<Shape> shapes;
  private final Look look;
  private final int[] surface;
  private final int[] line;
  private final boolean[] solid;

  ShapeColours(List<Shape> shapes, Look look) {
    this.shapes = shapes;
    this.look = look;
    surface = new int[shapes.size()];
    line = new int[shapes.size()];
    solid = new boolean[shapes.size()];
  }

  /** Finds those of some shapes, from one to before another. */
  void find(int from, int end) {
    for (int s = from; s < end; s++) {
      Paint paint = look.paints().of(shapes.get(s));
      if (Look.hides(paint)) {
        continue;
      }
      solid[s] = paint.isSolid();
      double opacity = solid[s] ? 1 : Math.min(1, STRONGER * paint.opacity());
      surface[s] = Colours.withAlpha(paint.rgb(), paint.opacity());
      line[s] = Colours.lit(Colours.withAlpha(paint.rgb(), opacity), solid[s] ? INK : FADED_INK);
    }
  }

  /** {@code 0xAARRGGBB} in full light; zero for what is hidden. */
  int surface(int shape) {
    return surface[shape];
  }

  int line(int shape) {
    return line[shape];
  }

  boolean isSolid(int shape) {
    return solid[shape];
  }

  boolean isHidden(int shape) {
    return surface[shape] == 0;
  }
}
