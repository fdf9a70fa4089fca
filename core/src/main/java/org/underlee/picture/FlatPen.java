package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Outline;
import org.underlee.geom.Triangulation;
import org.underlee.geom.Vec2;

/**
 * Draws flat things in sample coordinates (x right, y down) as triangles, each over the last:
 * areas, lines of any width, text.
 */
final class FlatPen {
  /** Widths of the text's lines and of the free space about it, for capitals 1 high. */
  private static final double TEXT_LINE = 0.13;

  private static final double PLATE_SPACE = 0.45;

  private final ScreenTriangles to;
  private final StrokeFont font = StrokeFont.BUILT_IN;
  private double depth;

  FlatPen(ScreenTriangles to) {
    this.to = to;
  }

  void area(Outline outline, int rgb) {
    depth++;
    Triangulation cut = Triangulation.of(outline);
    for (int[] t : cut.triangles()) {
      triangle(cut.points().get(t[0]), cut.points().get(t[1]), cut.points().get(t[2]), rgb);
    }
  }

  /**
   * A line of some width.
   *
   * @param closed whether the last point joins the first
   * @param square whether free ends reach half a width further, or stop at the point
   */
  void line(List<Vec2> points, boolean closed, double width, boolean square, int rgb) {
    depth++;
    List<Vec2> all = new ArrayList<>(points);
    if (closed) {
      all.add(points.get(0));
    }
    int last = all.size() - 2;
    for (int i = 0; i <= last; i++) {
      double before = closed || square || i > 0 ? width / 2 : 0;
      double after = closed || square || i < last ? width / 2 : 0;
      segment(all.get(i), all.get(i + 1), before, after, width, rgb);
    }
  }

  private void segment(Vec2 a, Vec2 b, double before, double after, double width, int rgb) {
    Vec2 d = b.minus(a);
    if (!(d.length() > 0)) {
      return;
    }
    Vec2 along = d.times(1 / d.length());
    Vec2 across = new Vec2(-along.y(), along.x()).times(width / 2);
    Vec2 start = a.minus(along.times(before));
    Vec2 end = b.plus(along.times(after));
    triangle(start.plus(across), start.minus(across), end.minus(across), rgb);
    triangle(start.plus(across), end.minus(across), end.plus(across), rgb);
  }

  double textWidth(String text, double height) {
    return font.width(text) * height;
  }

  /**
   * A text.
   *
   * @param origin start of the base line
   * @param along the way it runs, of length one
   * @param height of its capitals
   */
  void text(String text, Vec2 origin, Vec2 along, double height, int rgb) {
    Vec2 up = new Vec2(along.y(), -along.x()).times(height);
    Vec2 right = along.times(height);
    for (List<Vec2> stroke : font.strokes(text)) {
      List<Vec2> placed =
          stroke.stream().map(p -> origin.plus(right.times(p.x())).plus(up.times(p.y()))).toList();
      line(placed, false, TEXT_LINE * height, true, rgb);
    }
  }

  /** A text in the middle of a light plate. */
  void note(double x, double y, String text, double height) {
    double half = textWidth(text, height) / 2;
    double space = PLATE_SPACE * height;
    double rim = TEXT_LINE * height;
    double top = y - height / 2 - space;
    double bottom = y + height / 2 + space;
    double left = x - half - space;
    double right = x + half + space;
    area(Outline.rectangle(left - rim, top - rim, right + rim, bottom + rim), Palette.INK);
    area(Outline.rectangle(left, top, right, bottom), Palette.BACKGROUND);
    text(text, new Vec2(x - half, y + height / 2), new Vec2(1, 0), height, Palette.INK);
  }

  private void triangle(Vec2 a, Vec2 b, Vec2 c, int rgb) {
    double[] p = {a.x(), a.y(), b.x(), b.y(), c.x(), c.y()};
    to.add(p, DepthPlane.level(depth), Colours.OPAQUE | rgb);
  }
}
