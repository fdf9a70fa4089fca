package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * Profile definitions as plane outlines in file units: rectangles (plain, rounded, hollow),
 * circles, ellipses, trapeziums, rolled sections ({@link RolledSections}), arbitrary outlines with
 * and without holes, strips along a centre line, and derived, mirrored or composite profiles.
 */
final class Profiles {
  /** A profile derived from a profile derived from … more often than this is a loop. */
  private static final int MAX_DERIVATIONS = 16;

  private final Curves curves;

  Profiles(Curves curves) {
    this.curves = curves;
  }

  /** The same with as many sides to every circle, so that sections of a taper match. */
  Profiles withAlikeArcs() {
    return new Profiles(curves.withAlikeArcs());
  }

  /** One outline, or those of a composite. */
  List<Outline> outlines(StepInstance profile) {
    return outlines(profile, 0);
  }

  /** The outline of a profile that has to be of one piece. */
  Outline only(StepInstance profile) {
    List<Outline> all = outlines(profile);
    if (all.size() != 1) {
      throw Unreadable.unsupported(profile, " of " + all.size() + " outlines here");
    }
    return all.get(0);
  }

  private List<Outline> outlines(StepInstance profile, int depth) {
    if (depth == MAX_DERIVATIONS) {
      throw Unreadable.degenerate(profile, "derived more than " + MAX_DERIVATIONS + " times over");
    }
    return switch (profile.keyword()) {
      case "IFCARBITRARYCLOSEDPROFILEDEF" -> List.of(Outline.of(ring(profile.follow(2))));
      case "IFCARBITRARYPROFILEDEFWITHVOIDS" ->
          List.of(
              new Outline(
                  ring(profile.follow(2)), profile.followAll(3).stream().map(this::ring).toList()));
      case "IFCCENTERLINEPROFILEDEF" -> List.of(strip(profile));
      case "IFCCOMPOSITEPROFILEDEF" ->
          profile.followAll(2).stream().flatMap(p -> outlines(p, depth + 1).stream()).toList();
      case "IFCDERIVEDPROFILEDEF", "IFCMIRROREDPROFILEDEF" -> derived(profile, depth);
      default -> List.of(moved(parameterized(profile), Axes.optionalPlacement(profile, 2)));
    };
  }

  /** Half the thickness to both sides of a centre line, square at its ends. */
  private Outline strip(StepInstance profile) {
    StepInstance curve = profile.follow(2);
    Coordinate[] line =
        curves.points(curve).stream()
            .map(p -> new Coordinate(p.x(), p.y()))
            .toArray(Coordinate[]::new);
    BufferParameters square =
        new BufferParameters(
            BufferParameters.DEFAULT_QUADRANT_SEGMENTS,
            BufferParameters.CAP_FLAT,
            BufferParameters.JOIN_MITRE,
            BufferParameters.DEFAULT_MITRE_LIMIT);
    Geometry strip =
        BufferOp.bufferOp(
            new GeometryFactory().createLineString(line), Curves.positive(profile, 3) / 2, square);
    if (!(strip instanceof Polygon polygon)) {
      throw Unreadable.degenerate(profile, "its strip is not of one piece");
    }
    List<List<Vec2>> holes = new ArrayList<>();
    for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
      holes.add(Rings.ring(profile, points(polygon.getInteriorRingN(i))));
    }
    return new Outline(Rings.ring(profile, points(polygon.getExteriorRing())), holes);
  }

  private static List<Vec3> points(LinearRing ring) {
    return Arrays.stream(ring.getCoordinates()).map(c -> new Vec3(c.x, c.y, 0)).toList();
  }

  private List<Vec2> ring(StepInstance curve) {
    return Rings.ring(curve, curves.points(curve));
  }

  private List<Outline> derived(StepInstance profile, int depth) {
    boolean mirrored = profile.keyword().equals("IFCMIRROREDPROFILEDEF");
    Transform map =
        mirrored
            ? new Transform(Vec3.ZERO, Vec3.X.negated(), Vec3.Y, Vec3.Z)
            : Axes.operator(profile.follow(3));
    return outlines(profile.follow(2), depth + 1).stream().map(o -> moved(o, map)).toList();
  }

  private Outline parameterized(StepInstance p) {
    return switch (p.keyword()) {
      case "IFCRECTANGLEPROFILEDEF" -> Outline.of(rectangle(p, 0, 0));
      case "IFCROUNDEDRECTANGLEPROFILEDEF" -> Outline.of(rectangle(p, 0, p.number(5)));
      case "IFCRECTANGLEHOLLOWPROFILEDEF" -> hollowRectangle(p);
      case "IFCCIRCLEPROFILEDEF" -> Outline.of(circle(Curves.positive(p, 3)));
      case "IFCCIRCLEHOLLOWPROFILEDEF" -> hollowCircle(p);
      case "IFCELLIPSEPROFILEDEF" ->
          Outline.of(ellipse(Curves.positive(p, 3), Curves.positive(p, 4)));
      default -> Outline.of(RolledSections.ring(p, curves.sag()));
    };
  }

  private Outline hollowRectangle(StepInstance p) {
    double wall = Curves.positive(p, 5);
    List<Vec2> outer = rectangle(p, 0, p.optionalNumber(7).orElse(0));
    return new Outline(outer, List.of(rectangle(p, wall, p.optionalNumber(6).orElse(0))));
  }

  /** The rectangle of attributes 3 and 4 less {@code inset} all round, with rounded corners. */
  private List<Vec2> rectangle(StepInstance p, double inset, double radius) {
    double x = Curves.positive(p, 3) / 2 - inset;
    double y = Curves.positive(p, 4) / 2 - inset;
    if (!(x > 0 && y > 0)) {
      throw Unreadable.degenerate(p, "walls of " + inset + " leave no hollow");
    }
    double r = Math.min(radius, Math.min(x, y));
    if (!(r > 0)) {
      return List.of(new Vec2(-x, -y), new Vec2(x, -y), new Vec2(x, y), new Vec2(-x, y));
    }
    List<Vec3> points = new ArrayList<>();
    for (int quarter = 0; quarter < 4; quarter++) {
      double cx = quarter == 0 || quarter == 3 ? x - r : r - x;
      double cy = quarter < 2 ? y - r : r - y;
      Arc corner = new Arc(new Vec3(cx, cy, 0), Vec3.X.times(r), Vec3.Y.times(r), curves.sag());
      points.addAll(corner.between(quarter * Math.PI / 2, (quarter + 1) * Math.PI / 2));
    }
    return Rings.ring(p, points);
  }

  List<Vec2> circle(double radius) {
    return ellipse(radius, radius);
  }

  private Outline hollowCircle(StepInstance p) {
    double outer = Curves.positive(p, 3);
    double wall = Curves.positive(p, 4);
    if (wall >= outer) {
      throw Unreadable.degenerate(p, "a wall of " + wall + " leaves no hollow in radius " + outer);
    }
    return new Outline(circle(outer), List.of(circle(outer - wall)));
  }

  private List<Vec2> ellipse(double a, double b) {
    Arc arc = new Arc(Vec3.ZERO, Vec3.X.times(a), Vec3.Y.times(b), curves.sag());
    return arc.ring().stream().map(p -> new Vec2(p.x(), p.y())).toList();
  }

  private static Outline moved(Outline outline, Transform map) {
    return new Outline(
        moved(outline.outer(), map), outline.holes().stream().map(h -> moved(h, map)).toList());
  }

  private static List<Vec2> moved(List<Vec2> ring, Transform map) {
    return ring.stream()
        .map(p -> map.apply(new Vec3(p.x(), p.y(), 0)))
        .map(p -> new Vec2(p.x(), p.y()))
        .toList();
  }
}
