package org.underlee.layout;

import static org.underlee.kit.DrainValue.CLEARANCE_ABOVE;
import static org.underlee.kit.DrainValue.RUN_PER_FALL;
import static org.underlee.kit.PanValue.HEAD_RAIL_LEAST_LEG;
import static org.underlee.kit.PanValue.HEAD_RAIL_LIP;
import static org.underlee.kit.PanValue.PAN_HEM;
import static org.underlee.kit.PanValue.PAN_SIDE_GAP;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.kit.Kit;
import org.underlee.layout.Derivation.Origin;

/**
 * The cap over the heads of two pans that fall away from one high line: folded along its middle, so
 * that it sheds to both, its ends turned up against the joists and screwed there.
 */
record PanRidgeCap(FieldPlan plan, PartNames names) {

  Part part(BayRun run) {
    Kit kit = plan.kit();
    double side = kit.get(PAN_SIDE_GAP);
    Interval across =
        new Interval(run.bay().leftFace().at(0) + side, run.bay().rightFace().at(0) - side);
    double lip = kit.get(HEAD_RAIL_LIP);
    RidgeFold fold =
        new RidgeFold(
            across,
            plan.seat(0) + kit.get(PAN_HEM) + kit.get(CLEARANCE_ABOVE) / 2,
            lip,
            lip,
            plan.fall(),
            kit.flashing().thickness());
    double ends = kit.get(HEAD_RAIL_LEAST_LEG);
    List<Extrusion> bodies = new ArrayList<>(fold.bodies(plan.frame()));
    bodies.addAll(fold.turnedUp(plan.frame(), ends));
    PartNames.Shape shape =
        PartNames.Shape.of(kit.flashing().id(), across.length(), 2 * lip, bodies)
            .foldedFrom(fold.flatWidth())
            .cutTo(across.length() + 2 * ends)
            .falling(plan.fall())
            .derived(derivations(run));
    return names.inBay(
        run.bay().id(),
        PartKind.RIDGE_CAP,
        1,
        shape,
        "over the heads of the pans that fall to both sides of the high line; seal its turned-up"
            + " ends to the joists");
  }

  private List<Derivation> derivations(BayRun run) {
    RunReckoning reckoning = new RunReckoning(plan, run);
    Reckoning length = reckoning.straightWidth(0).minus(PAN_SIDE_GAP).minus(PAN_SIDE_GAP);
    Reckoning width = new Reckoning(plan.kit()).from(HEAD_RAIL_LIP).plus(HEAD_RAIL_LIP);
    Origin falls = width.origin(RUN_PER_FALL);
    return List.of(
        length.gives(Dimension.LENGTH),
        new Reckoning(length)
            .plus(HEAD_RAIL_LEAST_LEG)
            .plus(HEAD_RAIL_LEAST_LEG)
            .gives(Dimension.FLAT_LENGTH),
        width.gives(Dimension.WIDTH),
        new Reckoning(width)
            .times("along the fall", Math.hypot(1, plan.fall()), falls)
            .gives(Dimension.FLAT_WIDTH),
        reckoning.fall());
  }
}
