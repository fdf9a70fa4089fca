package org.underlee.layout;

import static org.underlee.kit.PanValue.NOTCH_CLEARANCE;
import static org.underlee.kit.PanValue.PAN_HEM;
import static org.underlee.kit.PanValue.PAN_SIDE_GAP;
import static org.underlee.kit.PanValue.RAIL_LEDGE;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Interval;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;

/**
 * The solids of one piece of side rail: its leg, its ledge, and the tongues at its notches.
 *
 * @param kit what it is made of
 * @param frame x along the rail, y up its leg, z toward growing u; y is zero on the ledge
 * @param into +1 when the bay lies toward growing u
 * @param own the piece's stretch along the rail, without its lap
 * @param lap how far its ledge goes on over the piece downhill
 */
record RailShape(Kit kit, Transform frame, int into, Interval own, double lap) {
  /** A tongue reaches this far past the pan's edge, so that its drip falls well inside. */
  private static final double PAST_HEM = 0.012;

  /** Kept between a tongue and what is above and below it. */
  private static final double PLAY = 0.0005;

  private static final double TONGUE_FALL = 1 / 8.0;

  /** A stretch of the leg with one height. */
  record Step(Interval stretch, double height) {}

  /** What the leg is notched to, and where the notch ends below the joist's bottom. */
  record Tongue(Interval stretch, double height) {}

  List<Extrusion> bodies(List<Step> top, List<Tongue> tongues) {
    List<Extrusion> bodies = new ArrayList<>();
    bodies.add(Sheet.plate(frame, legOutline(top), into > 0 ? 0 : -thick(), thick()));
    Transform flat = new Transform(frame.origin(), frame.x(), frame.z(), frame.y().negated());
    bodies.add(Sheet.plate(flat, ledgeOutline(), 0, thick()));
    tongues.stream().filter(t -> rise() > 0).forEach(t -> bodies.add(tongue(t)));
    return bodies;
  }

  private double thick() {
    return kit.item(Items.SIDE_RAIL).thickness();
  }

  private Outline legOutline(List<Step> steps) {
    List<Vec2> ring = new ArrayList<>();
    ring.add(new Vec2(own.from(), 0));
    ring.add(new Vec2(own.to(), 0));
    for (int i = steps.size() - 1; i >= 0; i--) {
      Step step = steps.get(i);
      ring.add(new Vec2(step.stretch.to(), step.height));
      ring.add(new Vec2(step.stretch.from(), step.height));
    }
    return Outline.of(ring);
  }

  /** Where it laps, the ledge passes beside the leg of the piece downhill. */
  private Outline ledgeOutline() {
    double ledge = into * kit.get(RAIL_LEDGE);
    if (lap <= 0) {
      return Outline.rectangle(own.from(), Math.min(0, ledge), own.to(), Math.max(0, ledge));
    }
    double beside = into * thick();
    return Outline.of(
        List.of(
            new Vec2(own.from(), 0),
            new Vec2(own.to(), 0),
            new Vec2(own.to(), beside),
            new Vec2(own.to() + lap, beside),
            new Vec2(own.to() + lap, ledge),
            new Vec2(own.from(), ledge)));
  }

  /** Height that a tongue loses on its way over the pan's edge. */
  private double rise() {
    double room = kit.get(NOTCH_CLEARANCE) - thick() - 2 * PLAY;
    return Math.min(TONGUE_FALL * reach(), room);
  }

  private double reach() {
    return kit.get(PAN_SIDE_GAP) + kit.item(Items.PAN_SHEET).thickness() + PAST_HEM;
  }

  /**
   * Folded out of the notch over the pan's edge: else what runs down the joist there would drip
   * from its bottom edge behind the leg.
   */
  private Extrusion tongue(Tongue tongue) {
    double t = thick();
    double low = Math.max(tongue.height, kit.get(PAN_HEM)) + PLAY;
    double high = low + rise();
    double atLeg = high - rise() * t / reach();
    Vec3 across = frame.z().times(into);
    Vec3 along = across.cross(frame.y());
    double start = into > 0 ? tongue.stretch.to() : tongue.stretch.from();
    Transform section = new Transform(frame.apply(new Vec3(start, 0, 0)), across, frame.y(), along);
    Outline outline =
        Outline.of(
            List.of(
                new Vec2(0, tongue.height),
                new Vec2(t, tongue.height),
                new Vec2(t, atLeg),
                new Vec2(reach(), low),
                new Vec2(reach(), low + t),
                new Vec2(0, high + t)));
    return Extrusion.straight(section, outline, tongue.stretch.length());
  }
}
