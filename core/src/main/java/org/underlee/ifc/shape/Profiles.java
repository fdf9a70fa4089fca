package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * Profile definitions as plane outlines in file units: rectangles (plain, rounded, hollow),
 * circles, ellipses, rolled sections without their fillets ({@link RolledSections}), arbitrary
 * outlines with and without holes, and derived or mirrored profiles.
 */
final class Profiles {
  /** A profile derived from a profile derived from … more often than this is a loop. */
  private static final int MAX_DERIVATIONS = 16;

  private final Curves curves;

  Profiles(Curves curves) {
    this.curves = curves;
  }

  Outline outline(StepInstance profile) {
    return outline(profile, 0);
  }

  private Outline outline(StepInstance profile, int depth) {
    return switch (profile.keyword()) {
      case "IFCARBITRARYCLOSEDPROFILEDEF" -> Outline.of(ring(profile.follow(2)));
      case "IFCARBITRARYPROFILEDEFWITHVOIDS" ->
          new Outline(
              ring(profile.follow(2)), profile.followAll(3).stream().map(this::ring).toList());
      case "IFCDERIVEDPROFILEDEF", "IFCMIRROREDPROFILEDEF" -> derived(profile, depth);
      default -> moved(parameterized(profile), Axes.optionalPlacement(profile, 2));
    };
  }

  private List<Vec2> ring(StepInstance curve) {
    return Rings.ring(curve, curves.points(curve));
  }

  private Outline derived(StepInstance profile, int depth) {
    if (depth == MAX_DERIVATIONS) {
      throw Unreadable.degenerate(profile, "derived more than " + MAX_DERIVATIONS + " times over");
    }
    boolean mirrored = profile.keyword().equals("IFCMIRROREDPROFILEDEF");
    Transform map =
        mirrored
            ? new Transform(Vec3.ZERO, Vec3.X.negated(), Vec3.Y, Vec3.Z)
            : Axes.operator(profile.follow(3));
    return moved(outline(profile.follow(2), depth + 1), map);
  }

  private static Outline parameterized(StepInstance p) {
    return switch (p.keyword()) {
      case "IFCRECTANGLEPROFILEDEF" -> Outline.of(rectangle(p, 0, 0));
      case "IFCROUNDEDRECTANGLEPROFILEDEF" -> Outline.of(rectangle(p, 0, p.number(5)));
      case "IFCRECTANGLEHOLLOWPROFILEDEF" -> hollowRectangle(p);
      case "IFCCIRCLEPROFILEDEF" -> Outline.of(circle(Curves.positive(p, 3)));
      case "IFCCIRCLEHOLLOWPROFILEDEF" -> hollowCircle(p);
      case "IFCELLIPSEPROFILEDEF" ->
          Outline.of(ellipse(Curves.positive(p, 3), Curves.positive(p, 4)));
      default -> Outline.of(RolledSections.ring(p));
    };
  }

  private static Outline hollowRectangle(StepInstance p) {
    double wall = Curves.positive(p, 5);
    List<Vec2> outer = rectangle(p, 0, p.optionalNumber(7).orElse(0));
    return new Outline(outer, List.of(rectangle(p, wall, p.optionalNumber(6).orElse(0))));
  }

  /** The rectangle of attributes 3 and 4 less {@code inset} all round, with rounded corners. */
  private static List<Vec2> rectangle(StepInstance p, double inset, double radius) {
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
      Arc corner = new Arc(new Vec3(cx, cy, 0), Vec3.X.times(r), Vec3.Y.times(r));
      points.addAll(corner.between(quarter * Math.PI / 2, (quarter + 1) * Math.PI / 2));
    }
    return Rings.ring(p, points);
  }

  private static List<Vec2> circle(double radius) {
    return Outline.circle(0, 0, radius, Arc.SIDES);
  }

  private static Outline hollowCircle(StepInstance p) {
    double outer = Curves.positive(p, 3);
    double wall = Curves.positive(p, 4);
    if (wall >= outer) {
      throw Unreadable.degenerate(p, "a wall of " + wall + " leaves no hollow in radius " + outer);
    }
    return new Outline(circle(outer), List.of(circle(outer - wall)));
  }

  private static List<Vec2> ellipse(double a, double b) {
    return circle(1).stream().map(c -> new Vec2(a * c.x(), b * c.y())).toList();
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
