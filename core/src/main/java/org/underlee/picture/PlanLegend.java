package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.underlee.bay.FieldBays;
import org.underlee.geom.Vec2;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/**
 * Below a plan: a scale bar, what its marks mean, and that the framing is assumed, where it is.
 *
 * @param assumed whether the framing is
 */
record PlanLegend(boolean assumed, boolean metric, boolean hasOpen, boolean hasLeaks)
    implements Annotated.Annotation {
  /** From the lowest thing drawn to the scale bar, and from there to what is written below, mm. */
  private static final double BELOW_MM = 8;

  private static final double ROW_MM = 4.5;

  /** From the bar's end to what marks mean, mm. */
  private static final double BESIDE_MM = 10;

  /** Size of a sample of hatching, half its height, and from its left to the words, mm. */
  private static final double SAMPLE_MM = 7;

  private static final double HALF_SAMPLE_MM = 1.4;
  private static final double WORDS_MM = 9;

  static PlanLegend below(List<FieldBays> fields, UnitSystem units, Optional<PlanWater> water) {
    return new PlanLegend(
        fields.stream().anyMatch(f -> f.field().isAssumed()),
        units == UnitSystem.METRIC,
        water.filter(PlanWater::hasOpen).isPresent(),
        water.filter(w -> !w.ways().isEmpty()).isPresent());
  }

  @Override
  public void write(PlanBuilder to, double mm) {
    Vec2 bar = lowLeft(to, mm).minus(new Vec2(0, BELOW_MM * mm));
    to.scaleBar(bar, metric ? 1 : Lengths.FOOT, metric ? 2 : 6, metric ? "m" : "ft");
    Vec2 row = bar.plus(new Vec2((metric ? 2 : 6 * Lengths.FOOT) + BESIDE_MM * mm, 0));
    Vec2 step = new Vec2(0, ROW_MM * mm);
    if (hasOpen) {
      sample(row, to, mm);
      words(row, PlanWater.OPEN_WORDS, to, mm);
      row = row.minus(step);
    }
    if (hasLeaks) {
      Vec2 end = row.plus(new Vec2(SAMPLE_MM * mm, 0));
      to.arrow(row, end, PlanStyle.LEAK);
      to.circle(end, PlanWater.SPOT_MM * mm, PlanStyle.ALERT);
      words(row, "rain gets through here, and its way there", to, mm);
    }
    if (assumed) {
      String words = "The framing is assumed: it is not in the model.";
      text(bar.minus(new Vec2(0, BELOW_MM * mm)), words, PlanBuilder.TEXT_MM, to);
    }
  }

  private static Vec2 lowLeft(PlanBuilder to, double mm) {
    List<Vec2> reach = new ArrayList<>();
    to.build("").items().forEach(i -> PlanReach.of(i, mm, reach));
    return new Vec2(
        reach.stream().mapToDouble(Vec2::x).min().orElseThrow(),
        reach.stream().mapToDouble(Vec2::y).min().orElseThrow());
  }

  private static void sample(Vec2 row, PlanBuilder to, double mm) {
    Envelope box =
        new Envelope(
            row.x(),
            row.x() + SAMPLE_MM * mm,
            row.y() - HALF_SAMPLE_MM * mm,
            row.y() + HALF_SAMPLE_MM * mm);
    PlanWater.hatch(new GeometryFactory().toGeometry(box), to, mm);
  }

  private static void words(Vec2 row, String text, PlanBuilder to, double mm) {
    text(row.plus(new Vec2(WORDS_MM * mm, 0)), text, PlanBuilder.SMALL_TEXT_MM, to);
  }

  private static void text(Vec2 at, String text, double size, PlanBuilder to) {
    to.label(at, text, size, PlanItem.Anchor.START, 0, PlanStyle.NOTE);
  }
}
