package org.underlee.layout;

import static org.underlee.kit.SheetValue.SHEET_CREST;
import static org.underlee.kit.SheetValue.SHEET_DEPTH;
import static org.underlee.kit.SheetValue.SHEET_PITCH;
import static org.underlee.kit.SheetValue.SHEET_WEB;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;

/**
 * The cross-section of ribbed sheet: ribs and troughs, a rib at the left edge. Where two sheets lie
 * side by side the left rib of one lies on the last rib of the other, so high above it that pieces
 * which lap along the fall fit between.
 *
 * @param rows pieces one after the other along the fall
 */
record SheetProfile(Kit kit, int rows) {
  /** More rows than any run below a deck has. */
  private static final int MOST_ROWS = 4;

  /** Height of the highest lap of any run. */
  static double highest(Kit kit) {
    return new SheetProfile(kit, MOST_ROWS).height();
  }

  private double thick() {
    return kit.item(Items.PROFILED_SHEET).thickness();
  }

  /** From the underside of the lowest piece to the top of the highest rib, square to the slope. */
  double height() {
    return kit.get(SHEET_DEPTH) + (2 * rows - 1) * thick();
  }

  /** By how much a piece lies higher than the one at the low end. */
  double lift(int piecesBelow) {
    return piecesBelow * thick();
  }

  /**
   * The section from its left edge.
   *
   * @param lapped whether its left rib lies on the rib of another sheet
   */
  Outline outline(double width, boolean lapped) {
    List<Vec2> under = underside(width, lapped);
    List<Vec2> ring = new ArrayList<>(under);
    Collections.reverse(under);
    under.forEach(p -> ring.add(new Vec2(p.x(), p.y() + thick())));
    return Outline.of(ring);
  }

  private List<Vec2> underside(double width, boolean lapped) {
    double crest = kit.get(SHEET_CREST);
    double web = kit.get(SHEET_WEB);
    double rib = kit.get(SHEET_DEPTH) - thick();
    List<Vec2> points = new ArrayList<>();
    for (double x = 0; x < width; x += kit.get(SHEET_PITCH)) {
      double high = rib + (x == 0 && lapped ? rows * thick() : 0);
      points.add(new Vec2(x, high));
      points.add(new Vec2(x + crest, high));
      points.add(new Vec2(x + crest + web, 0));
      points.add(new Vec2(x + kit.get(SHEET_PITCH) - web, 0));
    }
    return cut(points, width);
  }

  /** What lies left of a width. */
  private static List<Vec2> cut(List<Vec2> points, double width) {
    List<Vec2> kept = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      Vec2 p = points.get(i);
      if (p.x() < width - SeatRange.SAME) {
        kept.add(p);
      } else {
        Vec2 before = kept.get(kept.size() - 1);
        double part = (width - before.x()) / (p.x() - before.x());
        kept.add(new Vec2(width, before.y() + part * (p.y() - before.y())));
        return kept;
      }
    }
    kept.add(new Vec2(width, kept.get(kept.size() - 1).y()));
    return kept;
  }
}
