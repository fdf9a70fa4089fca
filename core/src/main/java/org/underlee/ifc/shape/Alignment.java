package org.underlee.ifc.shape;

import java.util.List;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/** The line of a road, a rail or a bridge, by the length along it. File units. */
interface Alignment {
  /**
   * Reads a line. One with cant (IfcSegmentedReferenceCurve) is refused: its sections lean by a
   * height over a width that the curve does not give.
   */
  static Alignment of(StepInstance curve, Curves curves) {
    return switch (curve.keyword()) {
      case "IFCGRADIENTCURVE", "IFCCOMPOSITECURVE" -> SegmentedAlignment.of(curve);
      case "IFCPOLYLINE" -> new Polyline(curve, curves.points(curve));
      case "IFCINDEXEDPOLYCURVE" -> {
        if (!curve.isOmitted(1)) {
          // Its arcs would be measured by their chords.
          throw Unreadable.unsupported(curve, " with segments, as the line sections are placed on");
        }
        yield new Polyline(curve, curves.points(curve));
      }
      default -> throw Unreadable.unsupported(curve, " as the line that sections are placed on");
    };
  }

  /**
   * A place on the line.
   *
   * @param tangent the way the line comes to it, of length one
   * @param normal square to the plane of a section there: the tangent but in a corner, where it
   *     halves the turn
   */
  record Station(Vec3 point, Vec3 tangent, Vec3 normal) {
    static Station on(Vec3 point, Vec3 tangent) {
      return new Station(point, tangent, tangent);
    }
  }

  Station at(double length);

  /** The lengths at which the line has corners, in ascending order. */
  default List<Double> corners() {
    return List.of();
  }
}
