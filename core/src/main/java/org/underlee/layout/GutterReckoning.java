package org.underlee.layout;

import static org.underlee.kit.DrainValue.DRIP_CLEARANCE;
import static org.underlee.kit.DrainValue.GUTTER_BACK_GAP;
import static org.underlee.kit.DrainValue.GUTTER_RUN_PER_FALL;
import static org.underlee.kit.DrainValue.GUTTER_WIDTH;
import static org.underlee.kit.DrainValue.HANGER_END;
import static org.underlee.kit.DrainValue.HANGER_SPACING;

import java.util.ArrayList;
import java.util.List;
import org.underlee.framing.BuildingElement;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.Derivation.KitValue;
import org.underlee.layout.Derivation.Measured;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Where the numbers of gutter pieces, end caps and hangers come from. */
record GutterReckoning(FieldPlan plan, GutterLine line) {

  List<Derivation> gutter(GutterBuilder.Piece piece) {
    double slope = plan.kit().gutterFall();
    Reckoning length =
        level(piece)
            .times(
                "along its own fall",
                Math.hypot(1, slope),
                new Reckoning(plan.kit()).origin(GUTTER_RUN_PER_FALL));
    return List.of(
        length.gives(Dimension.LENGTH),
        new Reckoning(plan.kit()).from(GUTTER_WIDTH).gives(Dimension.WIDTH),
        Reckoning.fall(plan.kit(), GUTTER_RUN_PER_FALL),
        rim(piece));
  }

  /** From a gutter's end under the outer served joist to its outlet, level. */
  private Reckoning level(GutterBuilder.Piece piece) {
    List<BuildingElement> from = new ArrayList<>();
    from.add(RunReckoning.element(plan.served().get(0).bay().left()));
    from.add(RunReckoning.element(plan.served().get(plan.served().size() - 1).bay().right()));
    piece.outlet().post().ifPresent(p -> from.add(p.element()));
    return new Reckoning(plan.kit())
        .from(
            Words.of(
                "from the gutter's high end to its outlet %s, level",
                piece.outlet().post().isPresent() ? "beside a post" : "near its end"),
            piece.level(),
            new Measured(from));
  }

  private Derivation rim(GutterBuilder.Piece piece) {
    Kit kit = plan.kit();
    double strap = kit.item(Items.HANGER).thickness();
    double highest = line.highRim() + kit.get(DRIP_CLEARANCE) + strap;
    double lower = line.highRim() - line.rimAt(piece.highU(), piece.outlet());
    Reckoning rim =
        new Reckoning(kit)
            .from(
                Words.of(
                    "the lowest of the pans' and strips' drips, the rails' ends and the joists"),
                highest,
                Reckoning.OWN)
            .minus(DRIP_CLEARANCE)
            .minus(
                "thickness of the hanger's strap",
                strap,
                new KitValue(Items.HANGER, kit.item(Items.HANGER).source()));
    if (lower > 0) {
      rim.minus(
          "as low as the longest piece needs at this outlet",
          lower,
          rim.origin(GUTTER_RUN_PER_FALL));
    }
    return rim.gives(Dimension.RIM);
  }

  List<Derivation> cap() {
    Kit kit = plan.kit();
    return List.of(
        new Reckoning(kit)
            .from(
                Words.of("thickness of the sheet"),
                kit.item(Items.END_CAP).thickness(),
                new KitValue(Items.END_CAP, kit.item(Items.END_CAP).source()))
            .gives(Dimension.LENGTH),
        new Reckoning(kit).from(GUTTER_WIDTH).gives(Dimension.WIDTH));
  }

  List<Derivation> hanger(GutterBuilder.Piece piece) {
    Kit kit = plan.kit();
    List<Derivation> all = new ArrayList<>();
    all.add(new Reckoning(kit).from(GUTTER_WIDTH).plus(GUTTER_BACK_GAP).gives(Dimension.LENGTH));
    all.add(
        new Reckoning(kit)
            .from(
                Words.of("width of the strap"),
                GutterBuilder.STRAP,
                new KitValue(Items.HANGER, kit.item(Items.HANGER).source()))
            .gives(Dimension.WIDTH));
    double inner = piece.level() - 2 * kit.get(HANGER_END);
    if (inner > 0) {
      Reckoning spacing = level(piece).minus(HANGER_END).minus(HANGER_END);
      spacing.over(
          Words.of("equal spaces, none more than %s", Quantity.length(kit.get(HANGER_SPACING))),
          GutterBuilder.gaps(inner, kit.get(HANGER_SPACING)),
          spacing.origin(HANGER_SPACING));
      all.add(spacing.gives(Dimension.SPACING));
    }
    return all;
  }
}
