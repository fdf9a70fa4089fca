package org.underlee.picture;

import static org.underlee.picture.BaySection.TALL;
import static org.underlee.picture.BaySection.tall;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.underlee.bay.Bay;
import org.underlee.bay.Block;
import org.underlee.framing.Field;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/**
 * The numbers of a {@link BaySection}: lengths, blocking, seats, fall, gutter and headroom. They
 * stand in rows above, below and beside what is drawn, far enough apart on paper at every scale.
 *
 * @param drawn what is drawn, in metres of the drawing
 * @param gutter how far the gutter reaches in it; empty where none is cut
 */
record SectionDimensions(
    Field field,
    Bay bay,
    Optional<FieldLayout> layout,
    UnitSystem units,
    Envelope drawn,
    Envelope gutter)
    implements Annotated.Annotation {
  /** From one row of texts to the next, mm of paper. */
  static final double ROW_MM = 4.5;

  /** Where a number that has no room over its line stands above the next, mm. */
  private static final double STEP_MM = 2.8;

  /** Free beside a text, mm. */
  private static final double GAP_MM = 1;

  /** How far the foot of the low seat's line is from the low end: past the gutter, mm. */
  private static final double SLANT_MM = 12;

  private static final double FALL_ARROW_MM = 10;

  /** Rows below what is drawn; fall, run and caption have more room. */
  private static final double HIGH_SEAT = 1;

  private static final double LOW_SEAT = 2;
  private static final double GUTTER = 3;
  private static final double GROUND_ARROW = 3.4;
  private static final double GROUND_TEXT = 4;
  private static final double FALL = 5;
  private static final double RUN = 7.3;
  private static final double CAPTION = 7.5;

  @Override
  public void write(PlanBuilder to, double mm) {
    new Writing(this, to, mm).write();
  }

  private boolean isServed() {
    return layout.stream().anyMatch(l -> l.bays().contains(bay.id()));
  }

  private String length(double metres) {
    return Lengths.format(metres, units);
  }

  /** At one scale. */
  private record Writing(SectionDimensions of, PlanBuilder to, double mm) {
    void write() {
      SectionNames names = SectionNames.of(of.bay, of.field, of.layout, of.units);
      lengths(names.height(mm));
      depth();
      of.layout.filter(l -> of.isServed()).ifPresent(this::assembly);
      names.write(to, mm, of.drawn.getMaxY());
      label(
          new Vec2((from() + of.bay.stretch().to()) / 2, row(CAPTION)),
          "Section through "
              + of.bay.id()
              + of.layout.filter(l -> !l.parts().isEmpty()).map(l -> " of " + l.mark()).orElse("")
              + ", high end to the left, places from there; heights drawn double",
          PlanItem.Anchor.BELOW,
          PlanStyle.NOTE);
    }

    private double from() {
      return of.bay.stretch().from();
    }

    /** Height of a row of texts below what is drawn. */
    private double row(double number) {
      return of.drawn.getMinY() - number * ROW_MM * mm;
    }

    /** From the high end to each blocking, and above it the whole. */
    private void lengths(double above) {
      double top = of.drawn.getMaxY();
      double offset = above + ROW_MM * mm;
      Room numbers = new Room(mm);
      double highest = offset;
      List<Double> at = new ArrayList<>(List.of(0.0));
      of.bay.blocking().stream().map(Block::at).sorted().forEach(at::add);
      for (int i = 0; i + 1 < at.size(); i++) {
        Vec2 a = new Vec2(from() + at.get(i), top);
        Vec2 b = new Vec2(from() + at.get(i + 1), top);
        Vec2 middle = to.dimensionLine(a, b, offset);
        String text = of.length(at.get(i + 1) - at.get(i));
        PlanItem.Label number = over(middle, text);
        while (!numbers.isFree(number)) {
          number = over(number.at().plus(new Vec2(0, STEP_MM * mm)), text);
        }
        numbers.take(number);
        to.add(number);
        highest = Math.max(highest, number.at().y() - top);
      }
      Vec2 high = new Vec2(from(), top);
      Vec2 low = new Vec2(of.bay.stretch().to(), top);
      to.dimension(high, low, highest + ROW_MM * mm, of.length(of.bay.length()));
    }

    private static PlanItem.Label over(Vec2 at, String text) {
      return new PlanItem.Label(
          at, text, PlanBuilder.SMALL_TEXT_MM, PlanItem.Anchor.ABOVE, 0, PlanStyle.DIMENSION);
    }

    /** Of the joist, beside its high end. */
    private void depth() {
      double bottom = of.bay.joistBottom(from());
      double top = of.bay.joistTop(from());
      double left = of.drawn.getMinX();
      Vec2 middle =
          to.dimensionLine(new Vec2(left, TALL * bottom), new Vec2(left, TALL * top), ROW_MM * mm);
      label(
          middle.minus(new Vec2(GAP_MM * mm, 0)),
          of.length(top - bottom),
          PlanItem.Anchor.END,
          PlanStyle.DIMENSION);
    }

    private void assembly(FieldLayout l) {
      double end = from() + l.run();
      highSeat(l);
      lowSeat(end, l);
      double middle = (from() + end) / 2;
      Vec2 half = new Vec2(FALL_ARROW_MM / 2 * mm, 0);
      Vec2 arrow = new Vec2(middle, row(FALL));
      to.arrow(arrow.minus(half), arrow.plus(half), PlanStyle.FALL);
      to.label(
          arrow,
          Lengths.fall(l.fall(), of.units),
          PlanBuilder.TEXT_MM,
          PlanItem.Anchor.BELOW,
          0,
          PlanStyle.FALL);
      to.dimension(
          new Vec2(from(), row(RUN)), new Vec2(end, row(RUN)), GAP_MM * mm, of.length(l.run()));
      gutter(end);
      headroom();
    }

    /** Below the bay, or to the left of it where its line would stand in the low seat's way. */
    private void highSeat(FieldLayout l) {
      String words = seat(from(), "high", l);
      double width = StrokeFont.BUILT_IN.width(words) * PlanBuilder.SMALL_TEXT_MM;
      boolean within = width + SLANT_MM + 2 * GAP_MM < l.run() / mm;
      Vec2 foot = new Vec2(from() + GAP_MM * mm, row(HIGH_SEAT));
      Vec2 text = foot.plus(new Vec2((within ? GAP_MM : -GAP_MM) * mm, 0));
      to.arrow(foot, new Vec2(foot.x(), TALL * seatAt(foot.x(), l)), PlanStyle.DIMENSION);
      PlanItem.Anchor anchor = within ? PlanItem.Anchor.START : PlanItem.Anchor.END;
      label(text, words, anchor, PlanStyle.TAG);
    }

    private void lowSeat(double end, FieldLayout l) {
      Vec2 foot = new Vec2(end - SLANT_MM * mm, row(LOW_SEAT));
      to.arrow(foot, tall(new Vec2(end, seatAt(end, l))), PlanStyle.DIMENSION);
      label(foot, seat(end, "low", l), PlanItem.Anchor.END, PlanStyle.TAG);
    }

    /** Height in the field's frame. */
    private static double seatAt(double v, FieldLayout l) {
      return l.seatHigh() - l.fall() * v;
    }

    private String seat(double v, String which, FieldLayout l) {
      return which + " seat " + aboutJoist(seatAt(v, l), v);
    }

    /** How far a height is off the joist bottom at a station. */
    private String aboutJoist(double height, double v) {
      double over = height - of.bay.joistBottom(v);
      return of.length(Math.abs(over)) + (over < 0 ? " below" : " above") + " joist bottom";
    }

    private void gutter(double end) {
      Envelope box = of.gutter;
      if (!box.isNull()) {
        Vec2 foot = new Vec2(box.centre().x, row(GUTTER));
        to.arrow(foot, new Vec2(foot.x(), box.getMinY()), PlanStyle.DIMENSION);
        String words = "gutter " + aboutJoist(box.getMinY() / TALL, end);
        label(foot, words, PlanItem.Anchor.END, PlanStyle.TAG);
      }
    }

    private void headroom() {
      Transform frame = of.field.frame();
      double lowest =
          BaySection.parts(
                  of.layout, PartKind.GUTTER, PartKind.PAN, PartKind.SHEET, PartKind.MEMBRANE)
              .mapToDouble(p -> p.bounds().min().z() - frame.origin().z())
              .min()
              .orElse(of.drawn.getMinY() / TALL);
      double x = of.drawn.getMaxX() + ROW_MM * mm;
      of.field.posts().stream()
          .mapToDouble(p -> frame.toLocal(p.element().shape().bounds().min()).z())
          .min()
          .ifPresent(
              ground -> {
                to.arrow(
                    new Vec2(x, TALL * lowest),
                    new Vec2(x, row(GROUND_ARROW)),
                    PlanStyle.DIMENSION);
                label(
                    new Vec2(x, row(GROUND_TEXT)),
                    of.length(lowest - ground) + " to the ground",
                    PlanItem.Anchor.END,
                    PlanStyle.NOTE);
              });
    }

    private void label(Vec2 at, String text, PlanItem.Anchor anchor, PlanStyle style) {
      to.label(at, text, PlanBuilder.SMALL_TEXT_MM, anchor, 0, style);
    }
  }
}
