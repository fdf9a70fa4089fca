package org.underlee.ifc;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.underlee.finding.InputException;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.ifc.shape.QuickReach;
import org.underlee.step.Glance;
import org.underlee.step.StepFile;

/**
 * Where products lie, told at a glance: what {@link Bodies#reach} says, to the last bit, without
 * decoding. Says so where it cannot tell. For one thread.
 */
final class QuickPlaces {
  /** Nothing but decoding tells. */
  private static final Seen UNSURE = new Seen(false, Optional.empty());

  /** The product has no representation. */
  private static final Seen BODILESS = new Seen(true, Optional.empty());

  /** No attribute of this kind. */
  private static final long NONE = 0;

  private final Glance glance;
  private final QuickReach reach;
  private final Placements placements;
  private final Transform metres;
  private final double metresPerUnit;
  private final Map<Long, Transform> known = new HashMap<>();

  /**
   * What a glance tells.
   *
   * @param tells false when decoding has to tell
   * @param body a box in world metres that surely holds the body; empty when there is none
   */
  record Seen(boolean tells, Optional<Box> body) {}

  QuickPlaces(StepFile step, Placements placements, double metresPerUnit) {
    this.glance = new Glance(step);
    this.reach = new QuickReach(step, glance);
    this.placements = placements;
    this.metresPerUnit = metresPerUnit;
    this.metres = Transform.scaling(metresPerUnit);
  }

  Seen of(int index) {
    try {
      glance.toIndex(index);
      glance.optionalText();
      glance.skip(4);
      long placement = glance.optionalRef();
      long shape = glance.optionalRef();
      glance.rest();
      if (shape == NONE) {
        return BODILESS;
      }
      Box box = reach.of(body(shape));
      Transform place = placement == NONE ? Transform.IDENTITY : world(placement);
      return new Seen(true, Optional.of(box.moved(place.after(metres))));
    } catch (Glance.Unsure | InputException | ArithmeticException | IllegalArgumentException e) {
      return UNSURE;
    }
  }

  /** The representation that {@link Bodies} chooses. */
  private long body(long shape) {
    glance.to(shape);
    glance.skip(2);
    long[] all = glance.refs();
    glance.rest();
    long other = NONE;
    long[] preferred = new long[Bodies.PREFERRED.size()];
    for (long one : all) {
      glance.to(one);
      glance.skip(1);
      String name = Bodies.upper(glance.optionalText());
      String type = Bodies.upper(glance.optionalText());
      glance.rest();
      int rank = Bodies.PREFERRED.indexOf(name);
      if (rank >= 0 && preferred[rank] == NONE) {
        preferred[rank] = one;
      }
      boolean solid = !Bodies.VIEWS.contains(name) && !Bodies.FLAT.contains(type);
      other = other == NONE && solid ? one : other;
    }
    for (long one : preferred) {
      if (one != NONE) {
        return one;
      }
    }
    if (other == NONE) {
      throw Glance.unsure();
    }
    return other;
  }

  private Transform world(long placement) {
    if (!glance.to(placement).equals("IFCLOCALPLACEMENT")) {
      return placements.world(placement);
    }
    long outer = glance.optionalRef();
    long own = glance.ref();
    glance.rest();
    Transform local = reach.placement(own);
    Transform relative =
        new Transform(local.origin().times(metresPerUnit), local.x(), local.y(), local.z());
    return (outer == NONE ? Transform.IDENTITY : outer(outer)).after(relative);
  }

  /** What many products stand in is remembered. */
  private Transform outer(long placement) {
    return known.computeIfAbsent(placement, placements::world);
  }
}
