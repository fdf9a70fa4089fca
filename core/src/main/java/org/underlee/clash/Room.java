package org.underlee.clash;

import java.util.List;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.layout.PartKind;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * What an arrangement is worth: the plan area under its pans, its pieces, and the lowest pan.
 *
 * @param area m²
 * @param lowest height in the world, metres; infinite without pans
 */
record Room(double area, int pieces, double lowest) {
  /** Heights nearer than this are one. */
  private static final double SAME = 0.0005;

  static Room of(List<Ours> parts) {
    double area = 0;
    double lowest = Double.POSITIVE_INFINITY;
    int pieces = 0;
    for (Ours part : parts) {
      pieces += part.shape().isEmpty() ? 0 : 1;
      if (part.isCover()) {
        area += shadow(part.shape());
      }
      if (part.kind() == PartKind.PAN) {
        lowest = Math.min(lowest, part.bounds().min().z());
      }
    }
    return new Room(area, pieces, lowest);
  }

  /** Plan area of what faces down. */
  private static double shadow(Mesh mesh) {
    double area = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 normal = mesh.areaNormal(t);
      area += Math.max(0, -normal.z()) / 2;
    }
    return area;
  }

  /** What another arrangement costs against this one. */
  Words price(Room other) {
    Words first =
        Words.of(
            "%s under pans against %s, %s pieces against %s",
            Quantity.area(other.area),
            Quantity.area(area),
            Quantity.count(other.pieces),
            Quantity.count(pieces));
    double lower = lowest - other.lowest;
    if (!(Math.abs(lower) >= SAME) || Double.isInfinite(lower)) {
      return first;
    }
    return Words.of(
        lower > 0 ? "%s, the lowest pan %s lower" : "%s, the lowest pan %s higher",
        first,
        Quantity.length(Math.abs(lower)));
  }
}
