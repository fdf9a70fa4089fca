package org.underlee.layout;

import static org.underlee.kit.DrainValue.CLEARANCE_ABOVE;
import static org.underlee.kit.PanValue.HEAD_RAIL_LEG;
import static org.underlee.kit.PanValue.HEAD_RAIL_LIP;
import static org.underlee.kit.PanValue.PAN_HEM;
import static org.underlee.kit.PanValue.PAN_SIDE_GAP;

import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.layout.Derivation.Op;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/** The head rail of a bay: a leg on the ledger's face, and a lip over the pan's head. */
record HeadRailBuilder(FieldPlan plan, PartNames names) {
  /** Kept between the head rail's top and the boards. */
  private static final double UNDER_BOARDS = 0.002;

  Part part(BayRun run) {
    double v = run.bay().stretch().from();
    double t = plan.kit().item(Items.HEAD_RAIL).thickness();
    double side = plan.kit().get(PAN_SIDE_GAP);
    Interval across =
        new Interval(run.bay().leftFace().at(v) + side, run.bay().rightFace().at(v) - side);
    double lip = plan.seat(v) + plan.kit().get(PAN_HEM) + plan.kit().get(CLEARANCE_ABOVE) / 2;
    double top =
        Math.min(lip + plan.kit().get(HEAD_RAIL_LEG), run.bay().joistTop(v) - UNDER_BOARDS);
    PartNames.Shape shape =
        PartNames.Shape.of(
                Items.HEAD_RAIL,
                across.length(),
                plan.kit().get(HEAD_RAIL_LIP),
                bodies(v, t, across, new Interval(lip, top)))
            .cutFrom(section(t, top - lip))
            .derived(derivations(run, v, lip));
    return names.inBay(
        run.bay().id(),
        PartKind.HEAD_RAIL,
        1,
        shape,
        "between the side rails, its lip over the pan's head, its leg behind the ledger's flashing");
  }

  private List<Derivation> derivations(BayRun run, double v, double lip) {
    RunReckoning reckoning = new RunReckoning(plan, run);
    Reckoning length = reckoning.straightWidth(v).minus(PAN_SIDE_GAP).minus(PAN_SIDE_GAP);
    Reckoning leg =
        new Reckoning(plan.kit())
            .from(HEAD_RAIL_LEG)
            .step(
                Op.AT_MOST,
                Words.of("room from the pan's edge up to the boards"),
                run.bay().joistTop(v) - UNDER_BOARDS - lip,
                Kind.LENGTH,
                reckoning.joists());
    return List.of(
        length.gives(Dimension.LENGTH),
        new Reckoning(plan.kit()).from(HEAD_RAIL_LIP).gives(Dimension.WIDTH),
        leg.gives(Dimension.LEG));
  }

  private List<Extrusion> bodies(double v, double t, Interval across, Interval leg) {
    Transform upright =
        plan.frame().after(new Transform(new Vec3(0, v + t, 0), Vec3.X, Vec3.Z, Vec3.Y.negated()));
    Outline legOutline = Outline.rectangle(across.from(), leg.from(), across.to(), leg.to());
    Outline lipOutline =
        Outline.rectangle(across.from(), 0, across.to(), plan.kit().get(HEAD_RAIL_LIP) - t);
    return List.of(
        Sheet.plate(upright, legOutline, 0, t),
        Sheet.plate(plan.sloped(0, v + t, leg.from()), lipOutline, 0, t));
  }

  private Outline section(double t, double leg) {
    double lip = plan.kit().get(HEAD_RAIL_LIP);
    return Outline.of(
        List.of(
            new Vec2(0, 0),
            new Vec2(lip, 0),
            new Vec2(lip, t),
            new Vec2(t, t),
            new Vec2(t, leg),
            new Vec2(0, leg)));
  }
}
