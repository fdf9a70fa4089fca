package org.underlee.picture;

import java.util.List;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;

/** A made-up plan of bays, to look at. */
final class DemoPlan {
  private static final double SPACING = 0.4;
  private static final int JOISTS = 9;
  private static final double PLY = 0.038;
  private static final double SPAN = 3.66;

  private DemoPlan() {}

  static PlanDrawing drawing() {
    PlanBuilder plan = new PlanBuilder();
    double width = (JOISTS - 1) * SPACING;
    plan.area(Outline.rectangle(-0.3, PLY, width + 0.3, PLY + 0.15), PlanStyle.CONTEXT);
    for (int i = 0; i + 1 < JOISTS; i++) {
      bay(plan, i);
    }
    for (int i = 0; i < JOISTS; i++) {
      double x = i * SPACING;
      plan.area(Outline.rectangle(x - PLY / 2, -SPAN, x + PLY / 2, 0), PlanStyle.JOIST);
    }
    plan.area(Outline.rectangle(-PLY / 2, 0, width + PLY / 2, PLY), PlanStyle.LEDGER);
    plan.area(Outline.rectangle(-PLY / 2, -SPAN - PLY, width + PLY / 2, -SPAN), PlanStyle.LEDGER);
    double beam = -SPAN + 0.5;
    plan.line(
        List.of(new Vec2(-0.2, beam - PLY), new Vec2(width + 0.2, beam - PLY)), PlanStyle.BEAM);
    plan.line(
        List.of(new Vec2(-0.2, beam + PLY), new Vec2(width + 0.2, beam + PLY)), PlanStyle.BEAM);
    plan.area(
        Outline.rectangle(-PLY / 2, -SPAN + 0.07, width + PLY / 2, -SPAN + 0.17), PlanStyle.GUTTER);
    plan.arrow(new Vec2(0.5, -SPAN + 0.12), new Vec2(width - 0.4, -SPAN + 0.12), PlanStyle.FALL);
    plan.circle(new Vec2(width - 0.2, -SPAN + 0.12), 0.04, PlanStyle.DOWNSPOUT);
    Vec2 text = new Vec2(width + 0.5, -SPAN + 0.4);
    plan.leader(new Vec2(width - 0.17, -SPAN + 0.14), text, "downspout Ø 80 mm");
    plan.dimension(new Vec2(0, -SPAN), new Vec2(SPACING, -SPAN), -0.25, "400 mm");
    plan.dimension(new Vec2(0, -SPAN), new Vec2(width, -SPAN), -0.5, "3200 mm (10' 6\")");
    plan.dimension(new Vec2(0, -SPAN), new Vec2(0, 0), 0.3, "3660 mm");
    plan.scaleBar(new Vec2(0, -SPAN - 1.1), 0.5, 4, "× 0.5 m");
    plan.scaleBar(new Vec2(0, -SPAN - 0.85), 0.3048, 6, "ft");
    plan.north(new Vec2(width + 0.6, -0.6), 20, 0.35);
    return plan.build("Bays <B1 & B8>");
  }

  private static void bay(PlanBuilder plan, int i) {
    double left = i * SPACING + PLY / 2;
    double right = left + SPACING - PLY;
    plan.area(
        Outline.rectangle(left + 0.003, -SPAN + 0.1, right - 0.003, -0.02),
        i == 5 ? PlanStyle.ALERT : PlanStyle.PAN);
    plan.area(Outline.rectangle(left, -SPAN, left + 0.02, 0), PlanStyle.RAIL);
    plan.area(Outline.rectangle(right - 0.02, -SPAN, right, 0), PlanStyle.RAIL);
    double middle = (left + right) / 2;
    if (i == 2) {
      plan.area(Outline.rectangle(left, -1.9, right, -1.9 + PLY), PlanStyle.BLOCKING);
      plan.circle(new Vec2(middle, -2.3), 0.05, PlanStyle.CROSSING);
    }
    plan.arrow(new Vec2(middle, -0.9), new Vec2(middle, -1.7), PlanStyle.FALL);
    plan.label(new Vec2(middle, -1.3), "1:96", 1.8, PlanItem.Anchor.ABOVE, 90, PlanStyle.FALL);
    plan.label(
        new Vec2(middle, -0.5), "B" + (i + 1), 2.5, PlanItem.Anchor.MIDDLE, 0, PlanStyle.TAG);
  }
}
