package org.underlee.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.underlee.bay.Bay;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Finding.Subject;
import org.underlee.finding.Fix;
import org.underlee.finding.Place;
import org.underlee.framing.JoistLine;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Says where the drained part of a field ends in the middle of the deck, and the rain that the last
 * joist sheds to its open side drips so near to what must stay dry that it splashes in.
 *
 * @param onDeck all fields of the deck
 */
record ZoneEdges(FieldPlan plan, OnDeck onDeck, DryZone zone, Wishes wishes) {
  /** Drops from a joist's bottom splash so far on a hard floor: common practice. */
  static final double SPLASH = 12 * Lengths.INCH;

  /** A zone is drawn this far past a joist to have the next bay served as well. */
  private static final double PAST = 0.01;

  /** Corners are told to a tenth of a millimetre. */
  private static final double TOLD = 1e4;

  /**
   * A joist that carries what drains one bay, with an open bay at its other side.
   *
   * @param side of the open bay that the joist is at
   * @param along what of it the served bay runs along
   */
  private record Edge(Bay open, RailSide side, Interval along) {
    JoistLine joist() {
      return side.line(open);
    }

    /** Stations of the joist's open face, from u to v, moved into the open bay. */
    Coordinate[] face(double moved) {
      Linear face = side.face(open).plus(side.into() * moved);
      return new Coordinate[] {
        new Coordinate(face.at(along.from()), along.from()),
        new Coordinate(face.at(along.to()), along.to())
      };
    }

    double distance(Geometry dry) {
      return new GeometryFactory().createLineString(face(0)).distance(dry);
    }
  }

  /** One finding for all edges of the field that are too near. */
  Optional<Finding> finding() {
    Geometry dry = zone.in(plan.frame());
    List<Edge> near =
        edges().stream().filter(e -> e.distance(dry) < SPLASH - SeatRange.SAME).toList();
    return near.stream()
        .map(e -> e.distance(dry))
        .min(Comparator.naturalOrder())
        .map(nearest -> finding(near, near.stream().map(e -> subject(e, dry)).toList(), nearest));
  }

  private Finding finding(List<Edge> near, List<Subject> subjects, double nearest) {
    return new Finding(
        LayoutRules.ZONE_SPLASHED,
        subjects,
        Words.of(
            "last joist before an open bay: rain drips from its far side and through the boards"
                + " beyond, so near to the dry zone that it splashes in."),
        subjects.get(0).place(),
        Optional.of(Measure.lengths(nearest, SPLASH)),
        Optional.of(fix(near)));
  }

  private Subject subject(Edge edge, Geometry dry) {
    Place place = edge.joist().plies().get(0).element().place();
    Quantity distance = Quantity.length(edge.distance(dry));
    return new Subject(plan.bays().field().id(), edge.joist().id(), place, Optional.of(distance));
  }

  private List<Edge> edges() {
    Set<Bay> served = plan.served().stream().map(BayRun::bay).collect(Collectors.toSet());
    List<Edge> edges = new ArrayList<>();
    for (BayRun run : plan.served()) {
      Interval drained = new Interval(run.bay().stretch().from(), run.lowFace());
      for (RailSide side : RailSide.values()) {
        plan.bays().bays().stream()
            .filter(b -> !served.contains(b))
            .filter(b -> side.line(b).equals(side.opposite().line(run.bay())))
            .map(b -> new Edge(b, side, b.stretch().meet(drained)))
            .filter(e -> !e.along.isEmpty())
            .forEach(edges::add);
      }
    }
    edges.sort(Comparator.comparing((Edge e) -> e.joist().left().at(e.along.from())));
    return edges;
  }

  /** One bay more at each edge that only the zone keeps open, if the field can serve them all. */
  private Fix fix(List<Edge> near) {
    Words words =
        Words.of(
            "Serve one more bay there: draw the dry zone on past the joist. Else tape the joist's"
                + " top, and expect splashes along this edge.");
    List<Bay> more = near.stream().filter(this::isOpenForTheZone).map(Edge::open).toList();
    if (more.isEmpty()) {
      return Fix.of(words);
    }
    DryZone wider =
        zone.and(near.stream().filter(this::isOpenForTheZone).map(this::strip).toList());
    FieldPlan then = FieldPlanner.best(plan.bays(), onDeck, plan.kit(), wishes.keepingDry(wider));
    boolean served = then.served().stream().map(BayRun::bay).toList().containsAll(more);
    if (!served) {
      return Fix.of(words);
    }
    Words price = Alternative.of(Words.of(""), then, plan).price();
    return Fix.with(
        words, new Fix.Action(List.of(new Fix.Option("--dry-zone", wider.text())), price));
  }

  private boolean isOpenForTheZone(Edge edge) {
    return !wishes.keepsDry(edge.open, plan.bays().field())
        && !wishes.leavesOpen(plan.bays().field().id(), edge.open.id());
  }

  /** A strip of the open bay beside the joist, in the model's coordinates. */
  private List<Vec2> strip(Edge edge) {
    Coordinate[] near = edge.face(0);
    Coordinate[] far = edge.face(PAST);
    return Stream.of(near[0], far[0], far[1], near[1])
        .map(c -> plan.frame().apply(new Vec3(c.x, c.y, 0)))
        .map(p -> new Vec2(Math.round(p.x() * TOLD) / TOLD, Math.round(p.y() * TOLD) / TOLD))
        .toList();
  }
}
