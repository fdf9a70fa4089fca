package org.underlee.drainage;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.underlee.drainage.Piece.Kind;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * Small cases of round numbers, in metres, for areas and depths that can be worked out on paper: x
 * is down the fall, y across it, z up.
 */
final class ByHand {
  static final String FIELD = "deck-1/field-1";
  private static final double SHEET = 0.001;

  private final Map<String, Piece> pieces = new LinkedHashMap<>();
  private final List<Catchment> catchments = new ArrayList<>();
  private final List<Arrival> arrivals = new ArrayList<>();
  private OptionalDouble ground = OptionalDouble.empty();

  /** A box from corner to corner. */
  static Mesh box(double x0, double y0, double z0, double x1, double y1, double z1) {
    Transform foot = Transform.translation(new Vec3(0, 0, z0));
    return Extrusion.straight(foot, Outline.rectangle(x0, y0, x1, y1), z1 - z0).mesh();
  }

  /** A sheet of 1 mm with this plan, whose top is at {@code a + b·x + c·y}. */
  static Mesh sheet(Outline plan, double a, double b, double c) {
    return wedge(plan, a, b, c, SHEET);
  }

  /** The same of another thickness. */
  static Mesh wedge(Outline plan, double a, double b, double c, double thickness) {
    Transform foot = Transform.translation(new Vec3(0, 0, a - thickness));
    Mesh level = Extrusion.straight(foot, plan, thickness).mesh();
    return level.transformed(
        new Transform(Vec3.ZERO, new Vec3(1, 0, b), new Vec3(0, 1, c), Vec3.Z));
  }

  static Mesh sheet(double x0, double y0, double x1, double y1, double a, double b) {
    return sheet(Outline.rectangle(x0, y0, x1, y1), a, b, 0);
  }

  static List<Vec2> ring(double x0, double y0, double x1, double y1) {
    return Outline.rectangle(x0, y0, x1, y1).outer();
  }

  /**
   * A pan of 2 m by 1 m that falls 1:50, from 100 mm above a gutter's floor to 60 mm, and reaches
   * 50 mm over the gutter. The gutter is 200 mm wide inside and falls 1:100 across to its outlet at
   * y 0.95; its outer rim is at 40 mm, the others at 50 to 52 mm. Rain falls on bay B1 of 2.1 m by
   * 0.4 m and B2 of 2.1 m by 0.6 m.
   */
  static ByHand drained() {
    return new ByHand()
        .put("pan", Kind.SHEET, sheet(0, 0, 2, 1, 0.1, -0.02))
        .put("gutter", Kind.GUTTER, gutter(1.95))
        .put("outlet", Kind.OUTLET, box(2, 0.9, -0.1, 2.1, 1, -0.0105))
        .put("pipe", Kind.PIPE, box(2, 0.9, -2, 2.1, 1, -0.09))
        .bay("B1", ring(0, 0, 2.1, 0.4))
        .bay("B2", ring(0, 0.4, 2.1, 1));
  }

  /** With its inside from {@code x} to 200 mm further down the fall. */
  static Mesh gutter(double x) {
    return Mesh.union(
        List.of(
            sheet(Outline.rectangle(x, 0, x + 0.2, 1), 0, 0, -0.01),
            box(x - 0.01, 0, -0.02, x, 1, 0.052),
            box(x + 0.2, 0, -0.02, x + 0.21, 1, 0.04),
            box(x - 0.01, -0.01, -0.02, x + 0.21, 0, 0.051),
            box(x - 0.01, 1, -0.02, x + 0.21, 1.01, 0.05)));
  }

  /** In the place of the piece of this name, where there is one. */
  ByHand put(String id, Kind kind, Mesh shape) {
    pieces.put(id, new Piece(id, kind, shape, false));
    return this;
  }

  ByHand sealed(String id) {
    pieces.computeIfPresent(id, (i, p) -> new Piece(i, p.kind(), p.shape(), true));
    return this;
  }

  ByHand without(String id) {
    if (pieces.remove(id) == null) {
      throw new AssertionError("no " + id);
    }
    return this;
  }

  ByHand bay(String name, List<Vec2> outline) {
    catchments.add(new Catchment(name, outline));
    return this;
  }

  /** Rain on this part of the plan only. */
  ByHand rainOn(double x0, double y0, double x1, double y1) {
    catchments.clear();
    return bay("B1", ring(x0, y0, x1, y1));
  }

  ByHand ground(double height) {
    ground = OptionalDouble.of(height);
    return this;
  }

  ByHand onto(double area, double x, double y) {
    arrivals.add(new Arrival(area, x, y));
    return this;
  }

  DrainCase given() {
    return new DrainCase(
        FIELD,
        Transform.IDENTITY,
        catchments,
        List.copyOf(pieces.values()),
        ground,
        arrivals,
        Set.of());
  }

  DrainProof proof() {
    return WaterProver.prove(given());
  }
}
