package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** What solids show from the side: the joint outline of the shadows of their faces. */
final class MeshElevation {
  /** Faces seen edge-on, or nearly so, add nothing, m². */
  private static final double EDGE_ON = 1e-9;

  private static final GeometryFactory JTS = new GeometryFactory();

  private MeshElevation() {}

  /** In the y and z of a rigid frame; hollows that are seen through are filled. */
  static List<Outline> of(List<Mesh> solids, Transform frame) {
    List<Geometry> shadows = new ArrayList<>();
    solids.forEach(m -> shadows(m, frame, shadows));
    Geometry all = UnaryUnionOp.union(shadows);
    List<Outline> outlines = new ArrayList<>();
    for (int i = 0; all != null && i < all.getNumGeometries(); i++) {
      if (all.getGeometryN(i) instanceof Polygon polygon) {
        outlines.add(Outline.of(ring(polygon)));
      }
    }
    return outlines;
  }

  private static void shadows(Mesh mesh, Transform frame, List<Geometry> to) {
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Coordinate[] ring = new Coordinate[4];
      for (int k = 0; k < 4; k++) {
        Vec3 p = frame.toLocal(mesh.vertex(mesh.corner(t, k % 3)));
        ring[k] = new Coordinate(p.y(), p.z());
      }
      Polygon shadow = JTS.createPolygon(ring);
      if (shadow.getArea() > EDGE_ON) {
        to.add(shadow);
      }
    }
  }

  private static List<Vec2> ring(Polygon polygon) {
    List<Vec2> points = new ArrayList<>();
    Coordinate[] all = polygon.getExteriorRing().getCoordinates();
    for (int i = 0; i + 1 < all.length; i++) {
      points.add(new Vec2(all[i].x, all[i].y));
    }
    return points;
  }
}
