package org.underlee.layout;

import static org.underlee.kit.DrainValue.RUN_PER_FALL;
import static org.underlee.kit.DrapeValue.FLANGE;
import static org.underlee.kit.DrapeValue.TROUGH_END_GAP;
import static org.underlee.kit.DrapeValue.TROUGH_TAIL;

import java.util.ArrayList;
import java.util.List;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.Derivation.Measured;
import org.underlee.units.Words;

/** The membrane of a bay as a part, with where its numbers come from. */
record DrapeBuilder(FieldPlan plan, PartNames names) {

  Part part(BayRun run) {
    DrapeShape s = new DrapeShape(run, plan.seatHigh());
    double length = run.panLength();
    PartNames.Shape shape =
        PartNames.Shape.of(Items.MEMBRANE, length, s.width(s.widest()), s.bodies(plan.frame()))
            .foldedFrom(s.floor(s.end()) + 2 * s.depth(s.end()) + s.edges())
            .cutTo(length + s.depth(s.start()) + plan.kit().get(TROUGH_TAIL))
            .falling(plan.fall())
            .derived(derivations(run, s));
    return names.inBay(
        run.bay().id(),
        PartKind.MEMBRANE,
        1,
        shape,
        "hangs from the joist tops, catches the bay's water and drips into the gutter");
  }

  private List<Derivation> derivations(BayRun run, DrapeShape s) {
    Kit kit = plan.kit();
    RunReckoning reckoning = new RunReckoning(plan, run);
    Measured joists = reckoning.joists();
    Reckoning length = reckoning.clearRun().minus(TROUGH_END_GAP);
    Reckoning flatLength =
        new Reckoning(length)
            .plus("turned up at the head to the joist tops", s.depth(s.start()), joists)
            .plus(TROUGH_TAIL);
    Reckoning flatWidth =
        new Reckoning(kit)
            .from(Words.of("floor at the low end, with its sag"), s.floor(s.end()), joists)
            .plus("both sides up to the joist tops", 2 * s.depth(s.end()), joists)
            .plus("both edges on the joist tops", s.edges(), length.origin(FLANGE));
    List<Derivation> all =
        new ArrayList<>(
            List.of(
                length.gives(Dimension.LENGTH),
                flatLength.gives(Dimension.FLAT_LENGTH),
                reckoning.straightWidth(s.widest()).gives(Dimension.WIDTH),
                flatWidth.gives(Dimension.FLAT_WIDTH),
                depth(s.depth(s.start()), joists, Dimension.DEPTH_HIGH),
                depth(s.depth(s.end()), joists, Dimension.DEPTH_LOW),
                Reckoning.fall(kit, RUN_PER_FALL)));
    all.addAll(reckoning.seats(s.start(), s.end()));
    return all;
  }

  private Derivation depth(double depth, Measured joists, Dimension dimension) {
    return new Reckoning(plan.kit())
        .from(Words.of("joist tops above the line where the floor begins"), depth, joists)
        .gives(dimension);
  }
}
