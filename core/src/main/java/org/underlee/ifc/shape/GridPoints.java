package org.underlee.ifc.shape;

import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * Placements at the intersection of two axes of a grid (IfcGridPlacement), in file units and the
 * grid's own coordinates. Only straight axes are read. Offsets go to the left of an axis, seen from
 * above, as the standard's IfcOffsetCurve2D has it.
 */
public final class GridPoints {
  private GridPoints() {}

  /** A straight axis: a point and its direction of length one. */
  private record Axis(Vec3 point, Vec3 direction) {
    Axis offset(double by) {
      return new Axis(point.plus(Vec3.Z.cross(direction).times(by)), direction);
    }
  }

  /** The virtual intersection that a grid placement names. */
  private static StepInstance location(StepInstance placement) {
    return placement.follow(first(placement));
  }

  /** IFC4X3 gave placements PlacementRelTo as their first attribute. */
  private static int first(StepInstance placement) {
    if (placement.size() < 2) {
      throw placement.error("it names no intersection of axes");
    }
    return placement.size() - 2;
  }

  /** One of the axes that meet there, by its instance number: it tells which grid it is. */
  public static long anAxis(StepInstance placement) {
    long[] axes = location(placement).refs(0);
    if (axes.length != 2) {
      throw Unreadable.degenerate(location(placement), axes.length + " axes where two should meet");
    }
    return axes[0];
  }

  /** The frame at the intersection. */
  public static Transform placement(StepInstance placement) {
    StepInstance here = location(placement);
    Vec3 at = point(here);
    Vec3 x =
        placement
            .optionalFollow(first(placement) + 1)
            .map(
                to ->
                    to.keyword().equals("IFCDIRECTION")
                        ? Axes.direction(to)
                        : point(to).minus(at).unit())
            .orElseGet(() -> axis(here, 0).direction());
    return Transform.frame(at, Vec3.Z, x);
  }

  private static Vec3 point(StepInstance intersection) {
    double[] offsets = intersection.numbers(1);
    Axis a = axis(intersection, 0).offset(offsets.length > 0 ? offsets[0] : 0);
    Axis b = axis(intersection, 1).offset(offsets.length > 1 ? offsets[1] : 0);
    double sine = a.direction().cross(b.direction()).z();
    // Axes a millionth of a radian apart are parallel by any drawing accuracy.
    if (Math.abs(sine) < 1e-6) {
      throw Unreadable.degenerate(intersection, "its two axes are parallel");
    }
    double along = b.point().minus(a.point()).cross(b.direction()).z() / sine;
    Vec3 up = Vec3.Z.times(offsets.length > 2 ? offsets[2] : 0);
    return a.point().plus(a.direction().times(along)).plus(up);
  }

  private static Axis axis(StepInstance intersection, int which) {
    StepInstance axis = intersection.followAll(0).get(which);
    Axis line = line(axis.follow(1));
    return axis.isTrue(2) ? line : new Axis(line.point(), line.direction().negated());
  }

  private static Axis line(StepInstance curve) {
    return switch (curve.keyword()) {
      case "IFCLINE" ->
          new Axis(Axes.point(curve.follow(0)), Axes.direction(curve.follow(1).follow(0)));
      case "IFCTRIMMEDCURVE" -> {
        Axis basis = line(requireStraight(curve.follow(0)));
        yield curve.isTrue(3) ? basis : new Axis(basis.point(), basis.direction().negated());
      }
      case "IFCPOLYLINE" -> {
        var points = curve.followAll(0);
        Vec3 from = Axes.point(points.get(0));
        if (points.size() != 2) {
          throw Unreadable.unsupported(curve, " of " + points.size() + " points as a grid axis");
        }
        yield new Axis(from, Axes.point(points.get(1)).minus(from).unit());
      }
      default -> throw Unreadable.unsupported(curve, " as a grid axis");
    };
  }

  /** A trimmed curve of a trimmed curve could go on for ever. */
  private static StepInstance requireStraight(StepInstance basis) {
    if (!basis.keyword().equals("IFCLINE")) {
      throw Unreadable.unsupported(basis, " as a grid axis");
    }
    return basis;
  }
}
