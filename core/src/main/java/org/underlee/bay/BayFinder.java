package org.underlee.bay;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.underlee.framing.Field;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Member;
import org.underlee.framing.Role;
import org.underlee.framing.Support;
import org.underlee.geom.Interval;
import org.underlee.geom.PlanShape;

/**
 * Finds the bays of a field: for each line, the stretches over which another line is the next one
 * to the right, cut back to the faces of what bounds them. Framing that ends joists between the two
 * ends (a header, a flush beam) so makes two bays of one; a sister over part of a line does not, as
 * the bay's width may vary along its run.
 */
public final class BayFinder {
  /** A stretch shorter than this is the step between two joist ends, not a bay. */
  static final double SHORTEST = 0.05;

  /** A bounding member's face lies within this of where the joists end. */
  private static final double AT_END = 0.2;

  /** A header fills the width between its trimmers but for the hangers. */
  private static final double HEADER_FIT = 0.05;

  /** What bounds joists turns from square by up to 60°: the joists' ends step by this share. */
  private static final double SKEW = 1.8;

  /** A piece between two lines, with its plan and what it is. */
  private record Piece(Member member, PlanShape shape, double u, double v, boolean strut) {}

  private final Field field;
  private final CrossingFinder crossings;

  /** In order of u. */
  private final List<Piece> pieces;

  private BayFinder(Field field, CrossingFinder crossings) {
    this.field = field;
    this.crossings = crossings;
    this.pieces =
        field.blocking().stream()
            .map(this::piece)
            .sorted(Comparator.comparingDouble(Piece::u))
            .toList();
  }

  private Piece piece(Member m) {
    PlanShape shape = field.shapeOf(m);
    boolean strut = field.roleBetweenLines(m) == Role.BRIDGING;
    return new Piece(m, shape, shape.across().middle(), shape.along().middle(), strut);
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
      double gap = right.leftAt(shared.middle()) - left.rightAt(shared.middle());
      if (shared.length() > SHORTEST && gap > 0) {
        Bay bay = bounded(left, right, shared);
        if (gap <= Field.WIDEST_BAY && !isOpening(bay)) {
          found.add(bay);
        }
        rest.addAll(stretch.without(right.stretch()));
      } else {
        rest.add(stretch);
      }
    }
    return rest.stream().filter(s -> s.length() > SHORTEST).toList();
  }

  private Bay bounded(JoistLine left, JoistLine right, Interval shared) {
    double u = (left.rightAt(shared.middle()) + right.leftAt(shared.middle())) / 2;
    // a header that ends one joist at its low end is the high end of the bay beside that joist
    List<Support> all = Stream.concat(field.high().stream(), field.low().stream()).toList();
    Optional<Support> high =
        all.stream()
            .filter(s -> isNear(s.shape().alongAt(u).to(), starts(left, right, shared)))
            .filter(s -> s.shape().alongAt(u).to() < shared.middle())
            .max(Comparator.comparingDouble(s -> s.shape().alongAt(u).to()));
    Optional<Support> low =
        all.stream()
            .filter(s -> isNear(s.shape().alongAt(u).from(), ends(left, right, shared)))
            .filter(s -> s.shape().alongAt(u).from() > shared.middle())
            .min(Comparator.comparingDouble(s -> s.shape().alongAt(u).from()));
    Interval stretch =
        new Interval(
            high.map(s -> s.shape().alongAt(u).to()).orElse(shared.from()),
            low.map(s -> s.shape().alongAt(u).from()).orElse(shared.to()));
    return new Bay("", left, right, stretch, high, low, List.of(), List.of(), List.of());
  }

  /**
   * Whether the stretch is an opening in the deck: a header that bounds it runs just from its one
   * line to the other, so that the joists between them end at the header's far side.
   */
  private static boolean isOpening(Bay bay) {
    return Stream.of(bay.high(), bay.low())
        .flatMap(Optional::stream)
        .filter(s -> s.role() == Role.HEADER)
        .map(s -> s.shape().across())
        .anyMatch(
            header ->
                Math.abs(header.from() - bay.left().rightAt(bay.stretch().middle())) <= HEADER_FIT
                    && Math.abs(header.to() - bay.right().leftAt(bay.stretch().middle()))
                        <= HEADER_FIT);
  }

  /**
   * Where the two lines start: on a skew, or at a hip, one starts further out than the other. A
   * line that passes by starts where the other does.
   */
  private static Interval starts(JoistLine left, JoistLine right, Interval shared) {
    double other = Math.min(left.stretch().from(), right.stretch().from());
    double pitch = right.left().at(shared.from()) - left.right().at(shared.from());
    return new Interval(
        shared.from() - other <= SKEW * pitch ? other : shared.from(), shared.from());
  }

  private static Interval ends(JoistLine left, JoistLine right, Interval shared) {
    double other = Math.max(left.stretch().to(), right.stretch().to());
    double pitch = right.left().at(shared.to()) - left.right().at(shared.to());
    return new Interval(shared.to(), other - shared.to() <= SKEW * pitch ? other : shared.to());
  }

  private static boolean isNear(double face, Interval end) {
    return face >= end.from() - AT_END && face <= end.to() + AT_END;
  }

  private Bay furnished(String id, Bay bay) {
    List<Block> blocking = standing(bay, false);
    List<Block> bridging = standing(bay, true);
    Bay blocked = bay.with(id, blocking, bridging, List.of());
    return bay.with(id, blocking, bridging, crossings.in(field, blocked));
  }

  private List<Block> standing(Bay bay, boolean struts) {
    List<Block> blocks = new ArrayList<>();
    double v0 = bay.stretch().middle();
    double least = Math.min(bay.left().left().at(bay.stretch().from()), bay.left().leftAt(v0));
    for (int i = firstFrom(least); i < pieces.size(); i++) {
      Piece piece = pieces.get(i);
      if (piece.u > bay.right().right().at(bay.stretch().from()) + Field.WIDEST_BAY) {
        break;
      }
      if (piece.strut == struts && isIn(bay, piece)) {
        blocks.add(block(bay, piece));
      }
    }
    blocks.sort(Comparator.comparingDouble(Block::at).thenComparing(b -> b.member().id()));
    return blocks;
  }

  private int firstFrom(double u) {
    int low = 0;
    int high = pieces.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (pieces.get(middle).u < u - Field.WIDEST_BAY) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private static boolean isIn(Bay bay, Piece piece) {
    return bay.stretch().contains(piece.v)
        && piece.u > bay.left().rightAt(piece.v)
        && piece.u < bay.right().leftAt(piece.v);
  }

  private static Block block(Bay bay, Piece piece) {
    double bottom = piece.shape.heights().from() - bay.joistBottom(piece.v);
    return new Block(
        piece.member,
        piece.shape.along(),
        piece.shape.heights(),
        bottom,
        piece.v - bay.stretch().from());
  }
}
