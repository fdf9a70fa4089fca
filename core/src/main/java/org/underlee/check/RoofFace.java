package org.underlee.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.underlee.geom.Mesh;
import org.underlee.geom.PlanGeometry;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * The faces of a roof that look up in one direction, in plan.
 *
 * @param fall down it, seen from above; of length 1
 * @param plan x along the eave and y down the fall, metres
 */
record RoofFace(Vec2 fall, Geometry plan) {
  /** Faces whose directions differ by no more are one, radians: a drawing's accuracy. */
  private static final double ONE_DIRECTION = 0.002;

  /** Strips are no wider: a deck's corner below an eave is met to half of this. */
  private static final double WIDEST = 0.05;

  /**
   * A strip down the face.
   *
   * @param width along the eave, metres
   * @param area in plan, m²
   * @param eave where its rain leaves the face, in the model's coordinates
   */
  record Strip(double width, double area, Vec2 eave) {}

  /** All of a roof's that fall at least so much. */
  static List<RoofFace> of(Mesh roof, double least) {
    Map<Vec3, List<Integer>> byDirection = new LinkedHashMap<>();
    for (int t = 0; t < roof.triangleCount(); t++) {
      Vec3 normal = roof.areaNormal(t);
      if (normal.z() > 0 && normal.horizontal().length() > least * normal.z()) {
        Vec3 own = normal.unit();
        Vec3 known =
            byDirection.keySet().stream()
                .filter(d -> d.minus(own).length() < ONE_DIRECTION)
                .findFirst()
                .orElse(own);
        byDirection.computeIfAbsent(known, d -> new ArrayList<>()).add(t);
      }
    }
    List<RoofFace> faces = new ArrayList<>();
    byDirection.forEach((normal, triangles) -> faces.add(of(roof, normal, triangles)));
    return faces;
  }

  private static RoofFace of(Mesh roof, Vec3 normal, List<Integer> triangles) {
    Vec2 flat = new Vec2(normal.x(), normal.y());
    Vec2 fall = flat.times(1 / flat.length());
    return new RoofFace(fall, PlanGeometry.faces(roof, triangles.stream(), frame(fall)));
  }

  /** x along the eave, y down the fall. */
  private static Transform frame(Vec2 fall) {
    Vec3 down = new Vec3(fall.x(), fall.y(), 0);
    return new Transform(Vec3.ZERO, down.cross(Vec3.Z), down, Vec3.Z);
  }

  List<Strip> strips() {
    List<Double> cuts = cuts();
    List<Strip> strips = new ArrayList<>();
    for (int i = 0; i + 1 < cuts.size(); i++) {
      double width = cuts.get(i + 1) - cuts.get(i);
      strips(cuts.get(i) + width / 2, width, strips);
    }
    return strips;
  }

  /** At every corner, so that between two of them lengths grow evenly; and at most so far apart. */
  private List<Double> cuts() {
    TreeSet<Double> corners = new TreeSet<>();
    for (Coordinate c : plan.getCoordinates()) {
      corners.add(c.x);
    }
    List<Double> cuts = new ArrayList<>();
    for (double corner : corners) {
      if (!cuts.isEmpty()) {
        double last = cuts.get(cuts.size() - 1);
        int parts = (int) Math.ceil((corner - last) / WIDEST);
        for (int i = 1; i < parts; i++) {
          cuts.add(last + (corner - last) * i / parts);
        }
      }
      cuts.add(corner);
    }
    return cuts;
  }

  private void strips(double middle, double width, List<Strip> to) {
    var around = plan.getEnvelopeInternal();
    Geometry line =
        new GeometryFactory(plan.getPrecisionModel())
            .createLineString(
                new Coordinate[] {
                  new Coordinate(middle, around.getMinY() - 1),
                  new Coordinate(middle, around.getMaxY() + 1)
                })
            .intersection(plan);
    Transform frame = frame(fall);
    for (int i = 0; i < line.getNumGeometries(); i++) {
      Geometry piece = line.getGeometryN(i);
      if (piece.getLength() > 0) {
        Vec3 eave = frame.apply(new Vec3(middle, piece.getEnvelopeInternal().getMaxY(), 0));
        to.add(new Strip(width, width * piece.getLength(), new Vec2(eave.x(), eave.y())));
      }
    }
  }
}
