package org.underlee.layout;

import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * Sheet folded along a high line, which is station 0: it falls to both sides as what it covers
 * does, and both sides meet along the line.
 *
 * @param across places across the field
 * @param under height of its underside at the line
 * @param forth how far it reaches down the field's own fall, level; {@code back} down the other's
 * @param thick of the sheet
 */
record RidgeFold(
    Interval across, double under, double forth, double back, double fall, double thick) {

  List<Extrusion> bodies(Transform frame) {
    return List.of(side(frame, forth), side(frame, -back));
  }

  private Extrusion side(Transform frame, double to) {
    return standing(frame, across.from(), across.length(), to, 0, thick);
  }

  /** Both ends turned up square, as high as said. */
  List<Extrusion> turnedUp(Transform frame, double height) {
    double other = across.to() - thick;
    return List.of(
        standing(frame, across.from(), thick, forth, thick, height),
        standing(frame, other, thick, forth, thick, height),
        standing(frame, across.from(), thick, -back, thick, height),
        standing(frame, other, thick, -back, thick, height));
  }

  /** Its width on the flat. */
  double flatWidth() {
    return (forth + back) * Math.hypot(1, fall);
  }

  private Extrusion standing(
      Transform frame, double u, double wide, double to, double low, double high) {
    double drop = fall * Math.abs(to);
    List<Vec3> corners =
        List.of(
            new Vec3(u, 0, under + low),
            new Vec3(u, to, under + low - drop),
            new Vec3(u, to, under + high - drop),
            new Vec3(u, 0, under + high));
    return Sheet.prism(frame, corners, Vec3.X.times(wide));
  }
}
