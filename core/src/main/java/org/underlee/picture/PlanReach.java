package org.underlee.picture;

import java.util.List;
import org.underlee.geom.Vec2;

/** How far the items of a plan reach. */
final class PlanReach {
  private PlanReach() {}

  /** Adds points whose box holds the item, in world metres. */
  static void of(PlanItem item, double metresPerMm, List<Vec2> to) {
    if (item instanceof PlanItem.Area area) {
      to.addAll(area.outline().outer());
    } else if (item instanceof PlanItem.Line line) {
      to.addAll(line.points());
    } else if (item instanceof PlanItem.Arrow arrow) {
      to.add(arrow.from());
      to.add(arrow.to());
    } else if (item instanceof PlanItem.Circle circle) {
      Vec2 reach = new Vec2(circle.radius(), circle.radius());
      to.add(circle.centre().minus(reach));
      to.add(circle.centre().plus(reach));
    } else if (item instanceof PlanItem.Label label) {
      LabelBox box = LabelBox.of(label);
      box.corners().forEach(c -> to.add(label.at().plus(c.times(metresPerMm))));
    }
  }
}
