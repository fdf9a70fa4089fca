package org.underlee.layout;

import static org.underlee.kit.PanValue.COLLAR_CLEARANCE;
import static org.underlee.kit.PanValue.PAN_HEM;
import static org.underlee.kit.PanValue.PAN_LAP;

import java.util.ArrayList;
import java.util.List;
import org.underlee.bay.Crossing;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.kit.Items;
import org.underlee.layout.Derivation.KitValue;
import org.underlee.units.Words;

/**
 * The saddles of a collar piece: each an upright sheet on its floor, folded to a point uphill of a
 * pipe, that leads the water past the hole on both sides. As high as the piece's edges; it stands
 * clear of the lap of the piece uphill.
 */
record SaddleBuilder(FieldPlan plan, PartNames names, BayRun run, TroughPiece trough) {
  /** Floor left between the hole's edge and the saddle, to seal it to. */
  private static final double RIM = 0.002;

  /** Kept between the saddle's point and the lap of the piece uphill. */
  private static final double OFF_LAP = 0.002;

  /** Thickness of the sealant that the saddle is bedded in. */
  private static final double BED = 0.0005;

  /** Arms at 45° where there is room: they clear leaves best. */
  private static final double SQUARE = Math.sqrt(2);

  /**
   * The saddle in plan, in the slope's frame.
   *
   * @param u place of the pipe's middle across, likewise {@code v} down the slope
   * @param across from there to the end of an arm
   * @param point from the pipe's middle up to the point
   * @param tangent across over along of an arm
   */
  private record Chevron(double u, double v, double across, double point, double tangent) {}

  /**
   * Over all pipes of the piece; a pipe with another close to it stands in its lee and has none.
   *
   * @param first ordinal of the first one
   */
  List<Part> parts(List<Crossing> pipes, Transform slope, int first) {
    List<Part> parts = new ArrayList<>();
    for (Crossing c : pipes) {
      if (pipes.stream().noneMatch(o -> !o.equals(c) && isNear(o, c))) {
        parts.add(part(c, slope, first + parts.size()));
      }
    }
    return parts;
  }

  private boolean isNear(Crossing other, Crossing pipe) {
    double apart =
        Math.abs(run.alongTo(other.stretch().middle()) - run.alongTo(pipe.stretch().middle()));
    return apart < SQUARE * (half(pipe.stretch().length()) + half(other.stretch().length()) + RIM);
  }

  private double half(double size) {
    return size / 2 + plan.kit().get(COLLAR_CLEARANCE);
  }

  private Part part(Crossing c, Transform slope, int ordinal) {
    Chevron chevron = chevron(c);
    double slant = Math.hypot(1, 1 / chevron.tangent);
    double floor = (trough.rank() + 1) * trough.thickness() + BED;
    PartNames.Shape shape =
        PartNames.Shape.of(
                Items.PAN_SHEET,
                2 * chevron.across * slant,
                trough.hem() - floor,
                List.of(body(chevron, slant, floor, slope)))
            .foldedFrom(trough.hem() - floor)
            .derived(derivations(c, slant, floor));
    return names.inBay(
        run.bay().id(),
        PartKind.SADDLE,
        ordinal,
        shape,
        "bedded in sealant on the collar piece, point uphill, to part the water before the pipe");
  }

  private Chevron chevron(Crossing c) {
    double v = run.alongTo(c.stretch().middle());
    double across = half(c.round() ? c.size() : c.acrossStretch().length()) + RIM;
    double along = half(c.round() ? c.size() : c.stretch().length()) + RIM;
    double room = v - trough.from() - plan.kit().get(PAN_LAP) - OFF_LAP;
    double point = Math.min(room, c.round() ? SQUARE * across : across + along);
    double tangent =
        c.round() ? across / Math.sqrt(point * point - across * across) : across / (point - along);
    return new Chevron(c.acrossStretch().middle(), v, across, point, tangent);
  }

  private Extrusion body(Chevron c, double slant, double floor, Transform slope) {
    double thick = trough.thickness() * slant;
    double tip = c.v - c.point;
    double end = tip + c.across / c.tangent;
    List<Vec2> ring =
        List.of(
            new Vec2(c.u, tip - thick),
            new Vec2(c.u + c.across, end - thick),
            new Vec2(c.u + c.across, end),
            new Vec2(c.u, tip),
            new Vec2(c.u - c.across, end),
            new Vec2(c.u - c.across, end - thick));
    return Sheet.plate(slope, Outline.of(ring), floor, trough.hem() - floor);
  }

  private List<Derivation> derivations(Crossing c, double slant, double floor) {
    Reckoning length =
        new Reckoning(plan.kit())
            .from(
                Words.of("half of the pipe"),
                (c.round() ? c.size() : c.acrossStretch().length()) / 2,
                RunReckoning.measured(List.of(c)))
            .plus(COLLAR_CLEARANCE)
            .plus("floor left beside the hole", RIM, Reckoning.OWN)
            .times("both arms", 2, Reckoning.OWN)
            .times("slant of the arms", slant, Reckoning.OWN);
    Reckoning width =
        new Reckoning(plan.kit())
            .from(PAN_HEM)
            .minus(
                "the floor's own sheet, and sealant",
                floor,
                new KitValue(Items.PAN_SHEET, plan.kit().item(Items.PAN_SHEET).source()));
    return List.of(
        length.gives(Dimension.LENGTH),
        width.gives(Dimension.WIDTH),
        width.gives(Dimension.FLAT_WIDTH));
  }
}
