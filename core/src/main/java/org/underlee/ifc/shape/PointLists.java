package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/** Lists of points and the numbers, from 1, by which tessellations refer to them. */
final class PointLists {
  private PointLists() {}

  static List<Vec3> points(StepInstance list) {
    List<Vec3> points = new ArrayList<>();
    for (double[] row : list.numberRows(0)) {
      if (row.length < 2 || row.length > 3) {
        throw list.error("a point of " + row.length + " coordinates");
      }
      points.add(new Vec3(row[0], row[1], row.length == 3 ? row[2] : 0));
    }
    return points;
  }

  /** The numbers in a list, less one, checked to be below {@code size}. */
  static int[] indices(StepInstance owner, StepValue value, int size) {
    if (!(value instanceof StepValue.ListOf list)) {
      throw owner.error("a list of point numbers should be here but is " + value.words());
    }
    int[] indices = new int[list.values().size()];
    for (int i = 0; i < indices.length; i++) {
      StepValue v = list.values().get(i);
      double number = v instanceof StepValue.Int n ? n.value() : 0;
      if (number < 1 || number > size) {
        throw owner.error("point number " + v.words() + " is not one of 1 to " + size);
      }
      indices[i] = (int) number - 1;
    }
    return indices;
  }
}
