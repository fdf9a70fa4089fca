package org.underlee.bay;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.underlee.framing.Field;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Member;
import org.underlee.framing.Support;
import org.underlee.geom.Interval;
import org.underlee.geom.PlanShape;

/**
 * Finds the bays of a field: for each line, the stretches over which another line is the next one
 * to the right, cut back to the faces of what bounds them. Framing that ends joists between the two
 * ends (a header, a flush beam) so makes two bays of one.
 */
public final class BayFinder {
  /** A stretch shorter than this is the step between two joist ends, not a bay. */
  private static final double SHORTEST = 0.05;

  /** A bounding member's face lies within this of where the joists end. */
  private static final double AT_END = 0.2;

  private final Field field;
  private final CrossingFinder crossings;

  private BayFinder(Field field, CrossingFinder crossings) {
    this.field = field;
    this.crossings = crossings;
  }

  public static FieldBays find(Field field, CrossingFinder crossings) {
    return new FieldBays(field, new BayFinder(field, crossings).bays());
  }

  private List<Bay> bays() {
    List<Bay> bays = new ArrayList<>();
    List<JoistLine> lines = field.lines();
    for (int i = 0; i < lines.size(); i++) {
      List<Interval> open = List.of(lines.get(i).stretch());
      List<Bay> found = new ArrayList<>();
      for (int j = i + 1; j < lines.size() && !open.isEmpty(); j++) {
        open = take(lines.get(i), lines.get(j), open, found);
      }
      found.sort(Comparator.comparingDouble(b -> b.stretch().from()));
      for (Bay bay : found) {
        bays.add(furnished("B" + (bays.size() + 1), bay));
      }
    }
    return bays;
  }

  /**
   * Takes the stretches that the two lines share out of the open ones; each is a bay if it fits.
   */
  private List<Interval> take(
      JoistLine left, JoistLine right, List<Interval> open, List<Bay> found) {
    List<Interval> rest = new ArrayList<>();
    for (Interval stretch : open) {
      Interval shared = stretch.meet(right.stretch());
      double gap = right.left().at(shared.middle()) - left.right().at(shared.middle());
      if (shared.length() > SHORTEST && gap > 0) {
        if (gap <= Field.WIDEST_BAY) {
          found.add(bounded(left, right, shared));
        }
        rest.addAll(stretch.without(right.stretch()));
      } else {
        rest.add(stretch);
      }
    }
    return rest.stream().filter(s -> s.length() > SHORTEST).toList();
  }

  private Bay bounded(JoistLine left, JoistLine right, Interval shared) {
    double u = (left.right().at(shared.middle()) + right.left().at(shared.middle())) / 2;
    // a header that ends one joist at its low end is the high end of the bay beside that joist
    List<Support> all = Stream.concat(field.high().stream(), field.low().stream()).toList();
    Optional<Support> high =
        all.stream()
            .filter(s -> isNear(s.shape().alongAt(u).to(), shared.from()))
            .filter(s -> s.shape().alongAt(u).to() < shared.middle())
            .max(Comparator.comparingDouble(s -> s.shape().alongAt(u).to()));
    Optional<Support> low =
        all.stream()
            .filter(s -> isNear(s.shape().alongAt(u).from(), shared.to()))
            .filter(s -> s.shape().alongAt(u).from() > shared.middle())
            .min(Comparator.comparingDouble(s -> s.shape().alongAt(u).from()));
    Interval stretch =
        new Interval(
            high.map(s -> s.shape().alongAt(u).to()).orElse(shared.from()),
            low.map(s -> s.shape().alongAt(u).from()).orElse(shared.to()));
    return new Bay("", left, right, stretch, high, low, List.of(), List.of());
  }

  private static boolean isNear(double face, double end) {
    return Math.abs(face - end) <= AT_END;
  }

  private Bay furnished(String id, Bay bay) {
    Bay blocked = bay.with(id, blocking(bay), List.of());
    return bay.with(id, blocked.blocking(), crossings.in(field, blocked));
  }

  private List<Block> blocking(Bay bay) {
    List<Block> blocks = new ArrayList<>();
    for (Member member : field.blocking()) {
      PlanShape shape = field.shapeOf(member);
      double v = shape.along().middle();
      double u = shape.across().middle();
      if (bay.stretch().contains(v) && u > bay.leftFace().at(v) && u < bay.rightFace().at(v)) {
        double bottom = shape.heights().from() - bay.joistBottom(v);
        blocks.add(
            new Block(member, shape.along(), shape.heights(), bottom, v - bay.stretch().from()));
      }
    }
    blocks.sort(Comparator.comparingDouble(Block::at).thenComparing(b -> b.member().id()));
    return blocks;
  }
}
