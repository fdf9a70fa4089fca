package org.underlee.picture;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.index.quadtree.Quadtree;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;

/** What of a drawing is taken at one scale, so that a text can be put elsewhere. */
final class Room {
  private static final GeometryFactory JTS = new GeometryFactory();
  private static final int CIRCLE_SIDES = 16;

  private final double mm;
  private final Quadtree taken = new Quadtree();

  /**
   * @param mm metres of the drawing that a millimetre of paper shows
   */
  Room(double mm) {
    this.mm = mm;
  }

  void take(PlanItem item) {
    Geometry shape = shape(item);
    taken.insert(shape.getEnvelopeInternal(), shape);
  }

  boolean isFree(PlanItem item) {
    Geometry shape = shape(item);
    for (Object other : taken.query(shape.getEnvelopeInternal())) {
      if (shape.intersects((Geometry) other)) {
        return false;
      }
    }
    return true;
  }

  private Geometry shape(PlanItem item) {
    if (item instanceof PlanItem.Label label) {
      return area(
          LabelBox.of(label).corners().stream().map(c -> label.at().plus(c.times(mm))).toList());
    } else if (item instanceof PlanItem.Arrow arrow) {
      return area(around(arrow));
    } else if (item instanceof PlanItem.Circle c) {
      Vec2 at = c.centre();
      return area(Outline.circle(at.x(), at.y(), c.radius(), CIRCLE_SIDES));
    } else if (item instanceof PlanItem.Area a) {
      return area(a.outline().outer());
    }
    return JTS.createLineString(coordinates(((PlanItem.Line) item).points(), false));
  }

  /** A box as wide as an arrow's head. */
  private List<Vec2> around(PlanItem.Arrow arrow) {
    Vec2 way = arrow.to().minus(arrow.from());
    Vec2 side = new Vec2(-way.y(), way.x()).times(ArrowOnPaper.HALF_WIDTH_MM * mm / way.length());
    return List.of(
        arrow.from().plus(side),
        arrow.to().plus(side),
        arrow.to().minus(side),
        arrow.from().minus(side));
  }

  private static Geometry area(List<Vec2> ring) {
    return JTS.createPolygon(coordinates(ring, true));
  }

  private static Coordinate[] coordinates(List<Vec2> points, boolean closed) {
    Coordinate[] all = new Coordinate[points.size() + (closed ? 1 : 0)];
    for (int i = 0; i < all.length; i++) {
      Vec2 p = points.get(i % points.size());
      all[i] = new Coordinate(p.x(), p.y());
    }
    return all;
  }
}
