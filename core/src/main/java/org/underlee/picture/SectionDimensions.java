package org.underlee.picture;

import static org.underlee.picture.BaySection.ROW;
import static org.underlee.picture.BaySection.TALL;
import static org.underlee.picture.BaySection.tall;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.bay.Block;
import org.underlee.framing.Field;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/** The numbers of a {@link BaySection}: lengths, blocking, seats, fall and headroom. */
final class SectionDimensions {
  private final PlanBuilder to;
  private final Field field;
  private final Bay bay;
  private final Optional<FieldLayout> layout;
  private final UnitSystem units;
  private final Transform frame;
  private final double top;
  private final double low;

  /**
   * @param top height of the highest thing drawn, and {@code low} of the lowest, metres
   */
  SectionDimensions(
      PlanBuilder to,
      Field field,
      Bay bay,
      Optional<FieldLayout> layout,
      UnitSystem units,
      double top,
      double low) {
    this.to = to;
    this.field = field;
    this.bay = bay;
    this.layout = layout;
    this.units = units;
    this.frame = field.frame();
    this.top = top;
    this.low = low;
  }

  void draw() {
    double from = bay.stretch().from();
    double end = bay.stretch().to();
    Vec2 highTop = tall(new Vec2(from, top));
    Vec2 lowTop = tall(new Vec2(end, top));
    double first = TALL * ROW;
    stations(from, first);
    to.dimension(highTop, lowTop, 2 * first, length(bay.length()));
    double bottom = bay.joistBottom(from);
    to.dimension(
        tall(new Vec2(from, bottom)),
        tall(new Vec2(from, bay.joistTop(from))),
        TALL * ROW * 1.4,
        length(bay.joistTop(from) - bottom));
    layout.filter(l -> isServed()).ifPresent(this::fall);
    to.label(
        new Vec2((from + end) / 2, TALL * (low - 4.5 * ROW)),
        "Section through "
            + bay.id()
            + layout.filter(l -> !l.parts().isEmpty()).map(l -> " of " + l.mark()).orElse("")
            + ", high end to the left, places from there; heights drawn double",
        PlanBuilder.SMALL_TEXT_MM,
        PlanItem.Anchor.BELOW,
        0,
        PlanStyle.NOTE);
  }

  /** From the high end to each blocking, in a row of their own. */
  private void stations(double from, double offset) {
    List<Double> at = new ArrayList<>(List.of(0.0));
    bay.blocking().stream().map(Block::at).sorted().forEach(at::add);
    for (int i = 0; i + 1 < at.size(); i++) {
      to.dimension(
          tall(new Vec2(from + at.get(i), top)),
          tall(new Vec2(from + at.get(i + 1), top)),
          offset,
          length(at.get(i + 1) - at.get(i)));
    }
  }

  private boolean isServed() {
    return BaySection.parts(layout, PartKind.PAN)
        .anyMatch(p -> p.bay().equals(Optional.of(bay.id())));
  }

  private void fall(FieldLayout l) {
    double from = bay.stretch().from();
    double end = from + l.run();
    double below = low - ROW;
    // its text runs to the left of the bay, or the other seat's line would cross it
    seat(from + 0.1 * l.run(), -0.1 * l.run() - 0.02, l, below);
    seat(from + 0.88 * l.run(), -0.03, l, below - 0.6 * ROW);
    double a = from + 0.38 * l.run();
    double b = from + 0.56 * l.run();
    double y = below - 1.5 * ROW;
    to.arrow(tall(new Vec2(a, y)), tall(new Vec2(b, y)), PlanStyle.FALL);
    to.label(
        tall(new Vec2((a + b) / 2, y)),
        Lengths.fall(l.fall()),
        PlanBuilder.TEXT_MM,
        PlanItem.Anchor.BELOW,
        0,
        PlanStyle.FALL);
    to.dimension(
        tall(new Vec2(from, below - 2.9 * ROW)),
        tall(new Vec2(end, below - 2.9 * ROW)),
        0.02,
        length(l.run()));
    headroom(end, below - 0.3 * ROW);
  }

  /**
   * The seat at a station, from the joist bottom there.
   *
   * @param aside from the station to the text, which runs on that way
   */
  private void seat(double v, double aside, FieldLayout l, double textAt) {
    double seat = l.seatHigh() - l.fall() * v;
    double over = seat - bay.joistBottom(v);
    String words =
        "seat "
            + length(Math.abs(over))
            + (over < 0 ? " below" : " above")
            + " joist bottom, at "
            + length(v - bay.stretch().from());
    to.leader(tall(new Vec2(v, seat)), tall(new Vec2(v + aside, textAt)), words);
  }

  private void headroom(double v, double y) {
    field.posts().stream()
        .mapToDouble(p -> frame.toLocal(p.element().shape().bounds().min()).z())
        .min()
        .ifPresent(
            ground -> {
              double lowest = lowestPart();
              Vec2 at = tall(new Vec2(v + 0.16, lowest));
              to.arrow(at, tall(new Vec2(v + 0.16, y - 2 * ROW)), PlanStyle.DIMENSION);
              to.label(
                  tall(new Vec2(v + 0.2, y - ROW)),
                  length(lowest - ground) + " to the ground",
                  PlanBuilder.SMALL_TEXT_MM,
                  PlanItem.Anchor.START,
                  0,
                  PlanStyle.NOTE);
            });
  }

  private double lowestPart() {
    return BaySection.parts(layout, PartKind.GUTTER, PartKind.PAN)
        .mapToDouble(p -> p.bounds().min().z() - frame.origin().z())
        .min()
        .orElse(low);
  }

  private String length(double metres) {
    return Lengths.format(metres, units);
  }
}
