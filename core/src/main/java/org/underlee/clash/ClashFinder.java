package org.underlee.clash;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.underlee.bay.FieldBays;
import org.underlee.clash.Theirs.Zone;
import org.underlee.finding.StopSign;
import org.underlee.geom.Box;

/**
 * Finds what an assembly hits, comes too near to, and hides. Boxes are compared first, in a tree;
 * bodies whose boxes come near are tested exactly, in parallel, with the same result for any number
 * of threads.
 */
public final class ClashFinder {
  /**
   * What was found.
   *
   * @param pairs of a part and a thing, all there are
   * @param examined pairs whose boxes came near
   * @param solved pairs left out because the layout deals with the crossing
   */
  public record Found(List<Clash> clashes, long pairs, long examined, long solved) {
    public Found {
      clashes = List.copyOf(clashes);
    }
  }

  private record Answer(List<Clash> clashes, long examined, long solved) {}

  private final List<Ours> parts;
  private final STRtree tree = new STRtree();
  private final SolvedCrossings crossings;

  private ClashFinder(List<FieldBays> fields, List<Ours> parts) {
    this.parts = parts.stream().filter(p -> !p.shape().isEmpty()).toList();
    this.crossings = SolvedCrossings.of(fields, parts);
    for (int i = 0; i < this.parts.size(); i++) {
      tree.insert(envelope(this.parts.get(i).bounds()), i);
    }
    tree.build();
  }

  /**
   * Tests every part against every thing.
   *
   * @param fields the bays that the parts serve, with what crosses them
   */
  public static Found find(List<FieldBays> fields, List<Ours> parts, List<Theirs> things) {
    ClashFinder finder = new ClashFinder(fields, parts);
    StopSign stop = StopSign.here();
    List<Answer> answers =
        IntStream.range(0, things.size())
            .parallel()
            .mapToObj(
                i -> {
                  stop.obey();
                  return finder.of(things.get(i));
                })
            .toList();
    List<Clash> all = new ArrayList<>();
    long examined = 0;
    long solved = 0;
    for (Answer answer : answers) {
      all.addAll(answer.clashes);
      examined += answer.examined;
      solved += answer.solved;
    }
    all.addAll(HiddenThings.in(fields, finder.parts, things));
    return new Found(all, (long) finder.parts.size() * things.size(), examined, solved);
  }

  private Answer of(Theirs thing) {
    List<Clash> found = new ArrayList<>();
    long solved = 0;
    List<Ours> near = near(thing.reach());
    for (Ours part : near) {
      Optional<Clash> clash = test(part, thing);
      boolean known =
          clash.filter(c -> c.cause() == Cause.TOO_NEAR).isPresent()
              && crossings.isSolved(part, thing.element());
      solved += known ? 1 : 0;
      clash.filter(c -> !known).ifPresent(found::add);
      zone(part, thing).ifPresent(found::add);
    }
    return new Answer(found, near.size(), solved);
  }

  private List<Ours> near(Box reach) {
    List<Integer> hits = new ArrayList<>();
    for (Object hit : tree.query(envelope(reach))) {
      if (parts.get((Integer) hit).bounds().meets(reach)) {
        hits.add((Integer) hit);
      }
    }
    hits.sort(null);
    return hits.stream().map(parts::get).toList();
  }

  /** The gravest contact of their bodies. */
  private static Optional<Clash> test(Ours part, Theirs thing) {
    double clearance = part.isInBay() ? thing.kind().inBay() : thing.kind().clearance();
    ContactTest test = new ContactTest(thing.kind().tolerance(), clearance);
    return part.pieces().stream()
        .flatMap(a -> thing.pieces().stream().flatMap(b -> test.of(a, b).stream()))
        .flatMap(c -> clash(part, thing, c, clearance).stream())
        .min(
            Comparator.comparing(Clash::cause)
                .thenComparingDouble(c -> c.cause() == Cause.TOO_NEAR ? c.amount() : -c.amount()));
  }

  private static Optional<Clash> clash(Ours part, Theirs thing, Contact c, double clearance) {
    return switch (c.kind()) {
      case DUPLICATE -> of(part, thing, Cause.DUPLICATE, c, c.depth(), 0);
      case INTERSECT -> of(part, thing, Cause.INTERSECT, c, c.depth(), 0);
      case GAP -> of(part, thing, Cause.TOO_NEAR, c, c.distance(), clearance);
      case TOUCH ->
          clearance > 0 ? of(part, thing, Cause.TOO_NEAR, c, 0, clearance) : Optional.empty();
    };
  }

  private static Optional<Clash> of(
      Ours part, Theirs thing, Cause cause, Contact c, double amount, double limit) {
    return Optional.of(new Clash(part, thing, cause, amount, limit, c.measured(), c.at()));
  }

  /** The zone that the part reaches furthest into. */
  private static Optional<Clash> zone(Ours part, Theirs thing) {
    ContactTest test = new ContactTest(thing.kind().tolerance(), 0);
    List<Clash> all = new ArrayList<>();
    for (Zone zone : thing.zones()) {
      if (zone.room().bounds().meets(part.bounds())) {
        for (Solid piece : part.pieces()) {
          test.of(piece, zone.room())
              .filter(c -> c.kind() == ClashKind.INTERSECT)
              .flatMap(c -> of(part, thing, zone.cause(), c, c.depth(), 0))
              .ifPresent(all::add);
        }
      }
    }
    return all.stream().max(Comparator.comparingDouble(Clash::amount));
  }

  private static Envelope envelope(Box box) {
    return new Envelope(box.min().x(), box.max().x(), box.min().y(), box.max().y());
  }
}
