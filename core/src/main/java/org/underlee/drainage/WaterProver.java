package org.underlee.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.underlee.drainage.Piece.Kind;
import org.underlee.drainage.Sinks.Sink;
import org.underlee.drainage.flow.ProofData;
import org.underlee.finding.StopSign;
import org.underlee.geom.Vec3;

/**
 * Proves where the rain on a deck goes: the plan is cut into {@link Column}s, the rain on each is
 * followed over the {@link WaterGraph}, and what ends in an outlet with a whole downspout is dry.
 * Deterministic; knows no kit.
 */
public final class WaterProver {
  private static final ProofData DATA = ProofData.builtIn();

  private final StopSign stop;
  private final DrainCase given;
  private final Places places;
  private final PlanSweep plan;
  private final List<Facet> facets;
  private final Neighbours neighbours;
  private final WaterGraph graph;

  private WaterProver(DrainCase given) {
    this.stop = StopSign.here();
    this.given = given;
    this.places = new Places(given);
    List<Piece> pieces = given.pieces();
    this.facets = new ArrayList<>();
    for (Facet facet : FacetReader.read(pieces, given.frame())) {
      Kind kind = pieces.get(facet.piece()).kind();
      if (kind != Kind.OUTLET && kind != Kind.PIPE) {
        facets.add(facet);
      }
    }
    stop.obey();
    Outlines outlines = new Outlines(pieces, places);
    this.plan =
        new PlanSweep(
                facets,
                outlines.areas(given.catchments()),
                places.outlets().size(),
                outlines.halves())
            .sweep(outlines.middles());
    stop.obey();
    places.learn(plan.columns());
    this.neighbours = new Neighbours(plan);
    stop.obey();
    this.graph = new WaterGraph(pieces, plan, neighbours, places);
  }

  /** The proof for all fields together. */
  public static DrainProof prove(List<DrainCase> cases) {
    StopSign stop = StopSign.here();
    Together all = new Together();
    for (DrainCase one : cases) {
      stop.obey();
      all.add(one, prove(one));
    }
    return all.proof();
  }

  /** The proof for one field. */
  public static DrainProof prove(DrainCase given) {
    return new WaterProver(given).proof();
  }

  private DrainProof proof() {
    graph.prepare(plan.columns());
    Fates fates = new Fates(graph, new FateBoard(plan.layers()), -1);
    Tally tally = new Tally(given, places, fates.sinks());
    for (Column column : plan.columns()) {
      stop.obey();
      if (column.catchment() >= 0) {
        tally.add(column, fateOf(column, fates));
      }
    }
    for (Arrival arrival : given.arrivals()) {
      Column column = at(arrival);
      if (column.catchment() >= 0) {
        tally.add(arrival, column, fateOf(column, fates));
      }
    }
    stop.obey();
    PipeRuns pipes = new PipeRuns(given.pieces(), places, given.ground());
    List<Optional<LeakCause>> faults = places.outlets().stream().map(pipes::fault).toList();
    stop.obey();
    Standing standing = new Standing(given, places, plan);
    return new DrainProof(
        tally.area(),
        tally.added(),
        tally.drained(faults),
        tally.leaks(faults),
        tally.outlets(),
        standing.ponds(fates),
        standing.blocked(fates),
        flat());
  }

  /** Where it lands: beside a strip too narrow to keep it lands in the next one. */
  private Column at(Arrival arrival) {
    Column there = neighbours.at(arrival.u(), arrival.v());
    return there.catchment() >= 0
        ? there
        : neighbours.at(arrival.u() + Neighbours.LEFT_OUT, arrival.v() + Neighbours.LEFT_OUT);
  }

  private Fate fateOf(Column column, Fates fates) {
    if (column.layers().length > 0) {
      return fates.of(column.layers()[0]);
    }
    double v = column.middleV();
    Vec3 at = new Vec3(column.middleU(), v, 0);
    LeakCause open = places.open(at, LeakCause.GAP);
    LeakCause cause = open == LeakCause.GAP && isHole(at) ? LeakCause.OPEN_HOLE : open;
    return fates.sinks().reached(Sink.leak(cause, -1, column.catchment()), at);
  }

  private boolean isHole(Vec3 at) {
    return IntStream.range(0, given.pieces().size())
        .filter(i -> given.pieces().get(i).kind() == Kind.SHEET)
        .anyMatch(i -> places.isWithin(i, at.x(), at.y()));
  }

  /** Faces that rain falls on; what lies under another part, as an edge under a strip, is dry. */
  private List<String> flat() {
    Set<Facet> open =
        plan.columns().stream()
            .filter(c -> c.layers().length > 0)
            .map(c -> c.layers()[0].top())
            .filter(f -> isCarrying(f) && (isLevel(f) || isBackward(f)))
            .collect(Collectors.toSet());
    return open.isEmpty()
        ? List.of()
        : facets.stream().filter(open::contains).map(f -> pieceId(f.piece())).distinct().toList();
  }

  /** A flashing may fall to the house, a pan may not. */
  private static boolean isBackward(Facet f) {
    return f.b() > WaterRules.LEVEL && f.length() > DATA.metres(ProofData.Key.FLASHING_LONGEST_MM);
  }

  private static boolean isLevel(Facet f) {
    return f.slope() < WaterRules.LEVEL;
  }

  private boolean isCarrying(Facet f) {
    return f.up()
        && !f.thin()
        && given.pieces().get(f.piece()).kind() != Kind.JOIST
        && f.extent() > DATA.get(ProofData.Key.LEVEL_FACE_M2);
  }

  private String pieceId(int piece) {
    return given.pieces().get(piece).id();
  }
}
