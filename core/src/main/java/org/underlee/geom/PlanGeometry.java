package org.underlee.geom;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.precision.GeometryPrecisionReducer;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/** What is seen in plan, as shapes of JTS. */
public final class PlanGeometry {
  /** A hundredth of a millimetre: under any tolerance of building, over the noise of a mesh. */
  private static final PrecisionModel GRID = new PrecisionModel(1e5);

  /** Corners that a straight edge passes this near are no corners. */
  private static final double STRAIGHT = 1e-4;

  private PlanGeometry() {}

  /**
   * The region inside a ring, which need not be a valid one.
   *
   * @param ring three corners or more, without the first again at the end
   */
  public static Polygon polygon(List<Vec2> ring) {
    Coordinate[] corners = new Coordinate[ring.size() + 1];
    for (int i = 0; i < corners.length; i++) {
      Vec2 p = ring.get(i % ring.size());
      corners[i] = new Coordinate(p.x(), p.y());
    }
    return new GeometryFactory(GRID).createPolygon(corners);
  }

  /**
   * The union of a body's faces that look up, in a frame's x and y. Corners are rounded to a
   * hundredth of a millimetre, so that the triangles of a mesh join without slits.
   *
   * @param least the cosine of the steepest slope that looks up: near 1 level faces alone, at 0 all
   *     that are seen from above
   * @return polygons; empty when no face looks up
   */
  public static Geometry facesUp(Mesh mesh, Transform frame, double least) {
    return faces(
        mesh,
        IntStream.range(0, mesh.triangleCount())
            .filter(t -> mesh.areaNormal(t).z() > least * mesh.areaNormal(t).length())
            .boxed(),
        frame);
  }

  /** The union of some of a body's faces, likewise. */
  public static Geometry faces(Mesh mesh, Stream<Integer> triangles, Transform frame) {
    List<Geometry> faces =
        triangles
            .map(t -> polygon(corners(mesh, t, frame)))
            .map(face -> GeometryPrecisionReducer.reduce(face, GRID))
            .filter(face -> face.getArea() > 0)
            .toList();
    GeometryFactory factory = new GeometryFactory(GRID);
    Geometry union = OverlayNGRobust.union(faces, factory);
    return union == null
        ? factory.createPolygon()
        : DouglasPeuckerSimplifier.simplify(union, STRAIGHT);
  }

  private static List<Vec2> corners(Mesh mesh, int triangle, Transform frame) {
    return IntStream.range(0, 3)
        .mapToObj(k -> frame.toLocal(mesh.point(triangle, k)))
        .map(p -> new Vec2(p.x(), p.y()))
        .toList();
  }
}
