package org.underlee.samples;

import java.util.List;
import org.underlee.samples.StepFile.Ref;

/** Points, directions and placements in the unit of the file. */
final class Geometry {
  private final StepFile file;
  private final double unit;

  Geometry(StepFile file, Mix.LengthUnit unit) {
    this.file = file;
    this.unit = unit.millimetres();
  }

  /** A length in the unit of the file. */
  double length(double millimetres) {
    return millimetres / unit;
  }

  Ref point(Xyz p) {
    return file.add("IFCCARTESIANPOINT", coordinates(p));
  }

  Ref point(double x, double y) {
    return file.add("IFCCARTESIANPOINT", List.of(length(x), length(y)));
  }

  List<Object> coordinates(Xyz p) {
    return List.of(length(p.x()), length(p.y()), length(p.z()));
  }

  Ref direction(Xyz d) {
    return file.share("IFCDIRECTION", List.of(d.x(), d.y(), d.z()));
  }

  Ref axes(Frame f) {
    return file.add("IFCAXIS2PLACEMENT3D", point(f.origin()), direction(f.z()), direction(f.x()));
  }

  /** The frame's axes are directions along which to extrude or the normal of a plane. */
  Ref axesAt(Xyz origin, Xyz z, Xyz x) {
    return file.add("IFCAXIS2PLACEMENT3D", point(origin), direction(z), direction(x));
  }

  /** Axes in a plane, without a turn. */
  Ref flatAxes() {
    Ref origin = file.share("IFCCARTESIANPOINT", List.of(0.0, 0.0));
    return file.share("IFCAXIS2PLACEMENT2D", origin, file.share("IFCDIRECTION", List.of(1.0, 0.0)));
  }

  /** Where a mapped shape goes. */
  Ref operator(Frame f) {
    return file.add(
        "IFCCARTESIANTRANSFORMATIONOPERATOR3D",
        direction(f.x()),
        direction(f.y()),
        point(f.origin()),
        StepFile.NONE,
        direction(f.z()));
  }
}
