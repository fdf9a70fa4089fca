package org.underlee.layout;

import static org.underlee.kit.DrainValue.FLASHING_DAM;
import static org.underlee.kit.DrainValue.FLASHING_LAP;
import static org.underlee.kit.DrainValue.FLASHING_LEG;
import static org.underlee.kit.DrainValue.FLASHING_OVER;
import static org.underlee.kit.DrainValue.FLASHING_UNDER;
import static org.underlee.kit.DrainValue.GUTTER_BACK_GAP;
import static org.underlee.kit.DrainValue.GUTTER_RUN_PER_FALL;

import java.util.ArrayList;
import java.util.List;
import org.underlee.framing.Member;
import org.underlee.geom.Interval;
import org.underlee.geom.Transform;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.kit.KitNumber;
import org.underlee.layout.Derivation.Measured;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** The pieces of flashing behind a gutter, each uphill one over the next. */
final class FlashingBuilder {
  private final FieldPlan plan;
  private final PartNames names;
  private final GutterLine line;
  private final BackFlashing flashing;
  private int made;

  FlashingBuilder(FieldPlan plan, PartNames names, GutterLine line, BackFlashing flashing) {
    this.plan = plan;
    this.names = names;
    this.line = line;
    this.flashing = flashing;
  }

  /**
   * Along one piece of gutter.
   *
   * @param frame of the piece: x level across, y up, z toward its outlet
   */
  List<Part> parts(GutterBuilder.Piece piece, Transform frame) {
    double ends = plan.kit().item(Items.END_CAP).thickness() + GutterStretches.BETWEEN / 2;
    double beyond = line.goesOn(piece.highU(), 2 * ends) ? ends : 0;
    List<Interval> own = BackFlashing.pieces(plan.kit(), new Interval(-beyond, piece.level()));
    double slope = Math.hypot(1, plan.kit().gutterFall());
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < own.size(); i++) {
      boolean last = i == own.size() - 1;
      double lap = last ? 0 : plan.kit().get(FLASHING_LAP);
      int above = own.size() - 1 - i;
      parts.add(
          names.inField(
              PartKind.FLASHING,
              ++made,
              PartNames.Shape.of(
                      plan.kit().flashing().id(),
                      (own.get(i).length() + lap) * slope,
                      flashing.width(),
                      flashing.bodies(piece, frame, own.get(i), lap, above))
                  .foldedFrom(flashing.flatWidth(piece, own.get(i)))
                  .falling(plan.kit().gutterFall())
                  .derived(derivations(piece, own.get(i), beyond, own.size(), last)),
              "leads what falls behind the gutter into it"));
    }
    return parts;
  }

  private List<Derivation> derivations(
      GutterBuilder.Piece piece, Interval own, double beyond, int count, boolean last) {
    Kit kit = plan.kit();
    Reckoning length = new GutterReckoning(plan, line).level(piece);
    if (beyond > 0) {
      length.plus("on to the next stretch's flashing", beyond, Reckoning.OWN);
    }
    if (count > 1) {
      length.over(
          Words.of(
              "equal pieces, none longer with its lap than %s",
              Quantity.length(BackFlashing.longest(kit))),
          count,
          length.origin(FLASHING_LAP));
    }
    if (!last) {
      length.plus(FLASHING_LAP);
    }
    length.times(
        "along the gutter's fall",
        Math.hypot(1, kit.gutterFall()),
        length.origin(GUTTER_RUN_PER_FALL));
    Reckoning width = width();
    Reckoning flat = turnedUp(new Reckoning(width));
    double more = flashing.flatWidth(piece, own) - flashing.flatWidth();
    if (more != 0) {
      flat.plus("narrower and turned up higher before a post", more, Reckoning.OWN);
    }
    return List.of(
        length.gives(Dimension.LENGTH),
        width.gives(Dimension.WIDTH),
        flat.gives(Dimension.FLAT_WIDTH),
        Reckoning.fall(kit, GUTTER_RUN_PER_FALL));
  }

  private Reckoning width() {
    Kit kit = plan.kit();
    Reckoning width = new Reckoning(kit).from(GUTTER_BACK_GAP);
    double posts = line.face() - line.back() - kit.get(GUTTER_BACK_GAP);
    if (posts > SeatRange.SAME) {
      width.plus("past posts that stand out from the face", posts, postsBehind());
    }
    width
        .plus("sheet of the gutter's back", kit.item(Items.GUTTER).thickness(), Reckoning.OWN)
        .plus(FLASHING_OVER);
    return flashing.reachesUnder() ? width.plus(FLASHING_UNDER) : width;
  }

  private Measured postsBehind() {
    return new Measured(plan.bays().field().posts().stream().map(Member::element).toList());
  }

  private Reckoning turnedUp(Reckoning flat) {
    KitNumber most = flashing.reachesUnder() ? FLASHING_DAM : FLASHING_LEG;
    return plan.kit().get(most) - flashing.turnedUp() < SeatRange.SAME
        ? flat.plus(most)
        : flat.plus(
            "turned up at its back as far as the joists above let it",
            flashing.turnedUp(),
            flat.origin(most));
  }
}
