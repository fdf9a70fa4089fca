package org.underlee.report.packet;

import java.util.List;
import org.underlee.framing.Member;
import org.underlee.geom.Interval;
import org.underlee.geom.Vec2;
import org.underlee.layout.PartKind;
import org.underlee.picture.PlanBuilder;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanItem;
import org.underlee.picture.PlanStyle;
import org.underlee.report.packet.GutterSheet.Span;

/**
 * The gutter of one field from the side.
 *
 * @param taller how much taller it is drawn than it is: 1 is true
 */
record GutterDrawing(Job job, Job.Place place, double taller) {
  /** From the gutter's rim to the dimension of an outlet, metres; the whole is above it. */
  private static final double LOWER_DIMENSION = 0.25;

  /** A number has no room over a length below this, metres, at the scales of a sheet. */
  private static final double SHORT = 0.8;

  private static final double BESIDE = 0.06;

  private static final PlanStyle HANGER =
      PlanStyle.lined("hanger", 0x6b4f2a, 0.15).filled(0xe2c799);

  /** Seen from the house, looking down the fall: J1 is at the left. */
  PlanDrawing plan() {
    List<Span> gutters = GutterSheet.spans(place, PartKind.GUTTER);
    PlanBuilder plan = new PlanBuilder();
    double start = gutters.get(0).across().from();
    double end = gutters.get(gutters.size() - 1).across().to();
    double top =
        gutters.stream().mapToDouble(g -> Math.max(g.topFrom(), g.topTo())).max().orElse(0);
    double bottom = gutters.stream().mapToDouble(Span::bottom).min().orElse(0);
    for (Member post : place.field().posts()) {
      var shape = place.field().shapeOf(post);
      rectangle(plan, shape.across(), bottom * taller - 0.5, top * taller + 0.15, PlanStyle.POST);
    }
    for (Span spout : GutterSheet.spans(place, PartKind.DOWNSPOUT)) {
      rectangle(plan, spout.across(), bottom * taller - 0.5, bottom * taller, PlanStyle.DOWNSPOUT);
    }
    for (Span g : gutters) {
      double depth = depth(g) * taller;
      plan.area(
          List.of(
              new Vec2(g.across().from(), g.topFrom() * taller - depth),
              new Vec2(g.across().to(), g.topTo() * taller - depth),
              new Vec2(g.across().to(), g.topTo() * taller),
              new Vec2(g.across().from(), g.topFrom() * taller)),
          PlanStyle.GUTTER);
      fallArrow(plan, g);
    }
    for (Span hanger : GutterSheet.spans(place, PartKind.HANGER)) {
      rectangle(
          plan,
          hanger.across(),
          (hanger.topFrom() - 0.02) * taller,
          hanger.topFrom() * taller + 0.04,
          HANGER);
    }
    labels(plan, new Interval(start, end), top * taller + 0.22, bottom * taller - 0.5);
    return plan.build(job.say("gutter.title"));
  }

  /** The trough's own depth at its high end: its lowest point is at the outlet. */
  private static double depth(Span g) {
    return Math.min(g.topFrom(), g.topTo()) - g.bottom();
  }

  private void fallArrow(PlanBuilder plan, Span g) {
    boolean right = g.topFrom() > g.topTo();
    double from = g.across().from() + g.across().length() * (right ? 0.3 : 0.7);
    double to = g.across().from() + g.across().length() * (right ? 0.6 : 0.4);
    double y = (g.topFrom() + g.topTo()) / 2 * taller - depth(g) * taller / 2;
    plan.arrow(new Vec2(from, y), new Vec2(to, y), PlanStyle.FALL);
  }

  private void labels(PlanBuilder plan, Interval across, double y, double bottom) {
    double start = across.from();
    double end = across.to();
    for (Span outlet : GutterSheet.spans(place, PartKind.OUTLET)) {
      outlet(plan, start, outlet.middle(), y);
      plan.label(
          new Vec2(outlet.middle(), bottom),
          outlet.part().label(),
          PlanBuilder.SMALL_TEXT_MM,
          PlanItem.Anchor.BELOW,
          0,
          PlanStyle.NOTE);
    }
    plan.dimension(
        new Vec2(start, y), new Vec2(end, y), 0.5, job.length(end - start).replace('\u00a0', ' '));
  }

  /** Measured from the left end; where that is short, the number stands beside it. */
  private void outlet(PlanBuilder plan, double start, double middle, double y) {
    String text = job.length(middle - start).replace('\u00a0', ' ');
    boolean isShort = middle - start < SHORT;
    plan.dimension(new Vec2(start, y), new Vec2(middle, y), LOWER_DIMENSION, isShort ? "" : text);
    if (isShort) {
      plan.label(
          new Vec2(middle + BESIDE, y + LOWER_DIMENSION),
          text,
          PlanBuilder.SMALL_TEXT_MM,
          PlanItem.Anchor.START,
          0,
          PlanStyle.DIMENSION);
    }
  }

  private static void rectangle(
      PlanBuilder plan, Interval across, double low, double high, PlanStyle style) {
    plan.area(
        List.of(
            new Vec2(across.from(), low),
            new Vec2(across.to(), low),
            new Vec2(across.to(), high),
            new Vec2(across.from(), high)),
        style);
  }
}
