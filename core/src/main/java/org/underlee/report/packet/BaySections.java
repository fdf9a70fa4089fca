package org.underlee.report.packet;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Envelope;
import org.underlee.bay.Bay;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.Part;
import org.underlee.picture.PlanBuilder;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanStyle;
import org.underlee.report.packet.SeatMarks.Row;

/** One bay cut along and across, with its marks and widths. */
record BaySections(Job job, Job.Place place, SectionCut cut, Bay bay) {
  /** From a mark to its text, metres: along the bay from the two ends, and down. */
  private static final double AFTER_HIGH = 0.25;

  private static final double BEFORE_LOW = -0.35;
  private static final double BELOW_MARK = 0.2;

  /** Below the lowest part, and above the joists. */
  private static final double AROUND = 0.05;

  /** From what is drawn to a dimension beyond it. */
  private static final double CLEAR = 0.02;

  /** Framing and parts beside the bay that a section across it shows, metres. */
  private static final double BESIDE = 0.12;

  /** How far above and below the joists a section along the bay is shown. */
  private static final double ROUND = 0.35;

  /** What a section along the bay shows of the house and beyond the rim, metres. */
  private static final double BEFORE_HIGH = 0.12;

  private static final double BEYOND_LOW = 0.15;

  /** Where along a bay without a pipe it is cut across, as a share of its length. */
  private static final double ACROSS_AT = 0.3;

  private static final PlanStyle JOIST_BEYOND =
      PlanStyle.lined("joist-beyond", 0xc9b48f, 0.15).filled(0xf8f1e3);

  /** Down the middle of the bay, or through its first pipe; the house at the left. */
  PlanDrawing along() {
    double v = bay.stretch().middle();
    double u =
        bay.crossings().stream()
            .mapToDouble(c -> c.acrossStretch().middle())
            .findFirst()
            .orElse((bay.leftFace().at(v) + bay.rightFace().at(v)) / 2);
    Transform field = place.field().frame();
    Transform plane = field.after(new Transform(new Vec3(u, 0, 0), Vec3.Y, Vec3.Z, Vec3.X));
    double low = Math.min(-ROUND, lowest() - AROUND);
    double high = bay.joistTop(v) + AROUND;
    Envelope shown =
        new Envelope(
            bay.stretch().from() - BEFORE_HIGH, bay.stretch().to() + BEYOND_LOW, low, high);
    PlanBuilder plan = new PlanBuilder();
    joistBeyond(plan);
    cut.draw(plan, plane, shown);
    seats(plan);
    return plan.build(job.say("sections.along", place.label(bay)));
  }

  /** The joist that is seen behind the cut, and its underside. */
  private void joistBeyond(PlanBuilder plan) {
    double from = bay.stretch().from();
    double to = bay.stretch().to();
    plan.area(
        List.of(
            new Vec2(from, bay.joistBottom(from)),
            new Vec2(to, bay.joistBottom(to)),
            new Vec2(to, bay.joistTop(to)),
            new Vec2(from, bay.joistTop(from))),
        JOIST_BEYOND);
  }

  /**
   * What the two drawings say in figures, as text; empty where there is no such thing.
   *
   * @param clear between the joists, where the bay is cut across
   * @param width of what catches the water there
   */
  record Figures(String clear, String width, String high, String low) {}

  Figures figures() {
    double v = acrossAt();
    Optional<Row> row = markedRow();
    return new Figures(
        job.length(bay.clearWidthAt(v)),
        caughtAt(v).map(p -> job.cut(p.width())).orElse(""),
        row.map(r -> job.height(r.first().height())).orElse(""),
        row.map(r -> job.height(r.last().height())).orElse(""));
  }

  private Optional<Row> markedRow() {
    return SeatMarks.of(place).stream()
        .filter(r -> r.isAt(bay) && r.line().equals(bay.left()))
        .findFirst();
  }

  /** Below what is cut across: the piece that catches the water. */
  private Optional<Part> caughtAt(double v) {
    return place.partsIn(bay).stream()
        .filter(
            p ->
                p.kind().catchesWater() && place.box(p).min().y() < v && place.box(p).max().y() > v)
        .findFirst();
  }

  /** At the first pipe, or a little below the middle. */
  private double acrossAt() {
    return bay.crossings().stream()
        .mapToDouble(c -> c.stretch().middle())
        .findFirst()
        .orElse(bay.stretch().from() + ACROSS_AT * bay.length());
  }

  /** The two marks, as on the sheet of marks. */
  private void seats(PlanBuilder plan) {
    markedRow()
        .ifPresent(
            row -> {
              Vec3 high = row.first().at();
              Vec3 low = row.last().at();
              plan.line(
                  List.of(new Vec2(high.y(), high.z()), new Vec2(low.y(), low.z())),
                  PlanStyle.FALL);
              leader(plan, high, AFTER_HIGH, row.first().height());
              leader(plan, low, BEFORE_LOW, row.last().height());
            });
  }

  /** A height with an arrow to its place, out of the way of what is drawn. */
  private void leader(PlanBuilder plan, Vec3 at, double aside, double height) {
    plan.leader(
        new Vec2(at.y(), at.z()),
        new Vec2(at.y() + aside, at.z() - BELOW_MARK),
        drawn(job.height(height)));
  }

  /** The letters of drawings have no space that does not break. */
  private static String drawn(String text) {
    return text.replace('\u00a0', ' ');
  }

  /** Across the bay a little below its middle, or at its first pipe; seen looking down the fall. */
  PlanDrawing across() {
    double v = acrossAt();
    Transform field = place.field().frame();
    Transform plane =
        field.after(new Transform(new Vec3(0, v, 0), Vec3.X, Vec3.Z, Vec3.Y.negated()));
    double left = bay.left().leftAt(v) - BESIDE;
    double right = bay.right().rightAt(v) + BESIDE;
    double low = lowest() - AROUND;
    double high = bay.joistTop(v) + AROUND;
    PlanBuilder plan = new PlanBuilder();
    cut.draw(plan, plane, new Envelope(left, right, low, high));
    plan.dimension(
        new Vec2(bay.left().rightAt(v), bay.joistTop(v)),
        new Vec2(bay.right().leftAt(v), bay.joistTop(v)),
        AROUND + CLEAR,
        drawn(job.length(bay.clearWidthAt(v))));
    caughtAt(v)
        .ifPresent(p -> width(plan, p, (bay.leftFace().at(v) + bay.rightFace().at(v)) / 2, low));
    return plan.build(job.say("sections.across", place.label(bay)));
  }

  /** The lowest of what is hung in the bay or below it, but for what leads the water away. */
  private double lowest() {
    return Stream.concat(place.partsIn(bay).stream(), place.partsBelow(bay).stream())
        .filter(p -> !p.bodies().isEmpty())
        .mapToDouble(p -> place.box(p).min().z())
        .min()
        .orElse(0);
  }

  private void width(PlanBuilder plan, Part part, double middle, double low) {
    plan.dimension(
        new Vec2(middle - part.width() / 2, low),
        new Vec2(middle + part.width() / 2, low),
        -CLEAR,
        drawn(job.say("sections.width", job.word(part.kind()), job.cut(part.width()))));
  }
}
