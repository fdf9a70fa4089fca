package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.underlee.drainage.Piece.Kind;
import org.underlee.drainage.Sinks.Sink;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * Proves where the rain on a deck goes: the plan is cut into {@link Column}s, the rain on each is
 * followed over the {@link WaterGraph}, and what ends in an outlet with a whole downspout is dry.
 * Deterministic; knows no kit.
 */
public final class WaterProver {
  /** A part of a column's rain smaller than this is no region of a leak. */
  private static final double SHOWN = 0.05;

  /** A part with a level face larger than this should have a fall. */
  private static final double FLAT_AREA = 0.02;

  private final DrainCase given;
  private final Places places;
  private final PlanSweep plan;
  private final Neighbours neighbours;
  private final Sinks sinks = new Sinks();
  private final List<Facet> facets;

  private WaterProver(DrainCase given) {
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
    List<double[]> areas = new ArrayList<>();
    given.catchments().forEach(c -> areas.add(edges(c.outline())));
    places.outlets().forEach(o -> areas.add(edges(opening(places.extent(o)))));
    this.plan = new PlanSweep(facets, areas, places.outlets().size(), halves()).sweep(middles());
    this.neighbours = new Neighbours(plan);
    places.learn(plan.columns());
  }

  /** The proof for all fields together. */
  public static DrainProof prove(List<DrainCase> cases) {
    double area = 0;
    double drained = 0;
    List<Leak> leaks = new ArrayList<>();
    List<OutletShare> outlets = new ArrayList<>();
    List<StandingWater> ponds = new ArrayList<>();
    List<StandingWater> blocked = new ArrayList<>();
    List<String> flat = new ArrayList<>();
    for (DrainCase one : cases) {
      DrainProof proof = prove(one);
      area += proof.area();
      drained += proof.drained();
      leaks.addAll(proof.leaks());
      outlets.addAll(proof.outlets());
      ponds.addAll(proof.ponds());
      blocked.addAll(proof.blocked());
      flat.addAll(proof.flat());
    }
    return new DrainProof(area, drained, leaks, outlets, ponds, blocked, flat);
  }

  /** The proof for one field. */
  public static DrainProof prove(DrainCase given) {
    return new WaterProver(given).proof();
  }

  /** One half of each joist that runs down the fall, so that no column lies in both halves. */
  private List<double[]> halves() {
    List<double[]> halves = new ArrayList<>();
    for (int i = 0; i < given.pieces().size(); i++) {
      Places.Extent e = places.extent(i);
      if (given.pieces().get(i).kind() == Kind.JOIST && !e.isAlongV()) {
        Places.Centre centre = places.centre(i);
        halves.add(
            edges(
                List.of(
                    new Vec2(e.min().x(), e.min().y()),
                    new Vec2(e.max().x(), e.min().y()),
                    new Vec2(e.max().x(), centre.at(e.max().x())),
                    new Vec2(e.min().x(), centre.at(e.min().x())))));
      }
    }
    return halves;
  }

  /** Where joists that run across have their middles. */
  private double[] middles() {
    return IntStream.range(0, given.pieces().size())
        .filter(i -> given.pieces().get(i).kind() == Kind.JOIST && places.extent(i).isAlongV())
        .mapToDouble(i -> places.extent(i).middleU())
        .toArray();
  }

  /** The largest square in a round outlet. */
  private static List<Vec2> opening(Places.Extent e) {
    double half = (e.max().x() - e.min().x()) / 2 * Math.sqrt(0.5);
    double u = e.middleU();
    double v = e.middleV();
    return List.of(
        new Vec2(u - half, v - half),
        new Vec2(u + half, v - half),
        new Vec2(u + half, v + half),
        new Vec2(u - half, v + half));
  }

  private static double[] edges(List<Vec2> ring) {
    double[] edges = new double[4 * ring.size()];
    for (int i = 0; i < ring.size(); i++) {
      Vec2 p = ring.get(i);
      Vec2 q = ring.get((i + 1) % ring.size());
      boolean turned = q.x() < p.x();
      edges[4 * i] = turned ? q.x() : p.x();
      edges[4 * i + 1] = turned ? q.y() : p.y();
      edges[4 * i + 2] = turned ? p.x() : q.x();
      edges[4 * i + 3] = turned ? p.y() : q.y();
    }
    return edges;
  }

  private WaterGraph graph(int blocked) {
    return new WaterGraph(given.pieces(), plan, neighbours, places, sinks, blocked);
  }

  private DrainProof proof() {
    Fates fates = new Fates(graph(-1), plan);
    Tally tally = new Tally();
    for (Column column : plan.columns()) {
      if (column.catchment() >= 0) {
        tally.add(column, fateOf(column, fates));
      }
    }
    List<Optional<LeakCause>> faults =
        places.outlets().stream()
            .map(o -> new PipeRuns(given.pieces(), places, given.ground()).fault(o))
            .toList();
    return new DrainProof(
        tally.area,
        tally.drained(faults),
        tally.leaks(faults),
        tally.outlets(faults),
        ponds(fates),
        blocked(),
        flat());
  }

  private Fate fateOf(Column column, Fates fates) {
    if (!column.layers().isEmpty()) {
      return fates.of(column.layers().get(0));
    }
    double v = column.middleV();
    Vec3 at = new Vec3(column.middleU(), v, 0);
    LeakCause open = places.open(at, LeakCause.GAP);
    LeakCause cause = open == LeakCause.GAP && isHole(at) ? LeakCause.OPEN_HOLE : open;
    return Fate.of(sinks.leak(cause, -1, column.catchment(), at));
  }

  private boolean isHole(Vec3 at) {
    return IntStream.range(0, given.pieces().size())
        .filter(i -> given.pieces().get(i).kind() == Kind.SHEET)
        .anyMatch(i -> places.isWithin(i, at.x(), at.y()));
  }

  private List<StandingWater> ponds(Fates fates) {
    return fates.pools().stream()
        .filter(p -> p.depth() > WaterRules.FILM)
        .map(p -> standing(p, Optional.empty()))
        .toList();
  }

  private List<StandingWater> blocked() {
    List<StandingWater> all = new ArrayList<>();
    for (int i = 0; i < places.outlets().size(); i++) {
      int outlet = i;
      Fates fates = new Fates(graph(i), plan);
      plan.columns().stream()
          .filter(c -> c.outlet() == outlet)
          .flatMap(c -> c.layers().stream())
          .filter(l -> given.pieces().get(l.piece()).kind() == Kind.GUTTER)
          .filter(l -> places.takes(outlet, l))
          .forEach(fates::of);
      fates.pools().stream()
          .max(Comparator.comparingDouble(Pool::volume))
          .ifPresent(p -> all.add(standing(p, Optional.of(pieceId(places.outlets().get(outlet))))));
    }
    return all;
  }

  private StandingWater standing(Pool pool, Optional<String> blocked) {
    Fate end = pool.end();
    String to = end == null ? "nowhere" : words(sinks.get(end.main()));
    return new StandingWater(
        pieceId(pool.piece()),
        blocked,
        pool.depth(),
        pool.area(),
        pool.volume(),
        world(pool.deepest()),
        world(pool.spillsAt()),
        to);
  }

  private String words(Sink sink) {
    return sink.cause()
        .map(c -> sink.piece() < 0 ? c.why() : c.why() + ": " + pieceId(sink.piece()))
        .orElseGet(() -> pieceId(places.outlets().get(sink.outlet())));
  }

  /** Faces that rain falls on; what lies under another part, as an edge under a strip, is dry. */
  private List<String> flat() {
    Set<Facet> open = new HashSet<>();
    plan.columns().stream()
        .filter(c -> !c.layers().isEmpty())
        .forEach(c -> open.add(c.layers().get(0).top()));
    return facets.stream()
        .filter(open::contains)
        .filter(f -> f.up() && !f.thin() && f.slope() < WaterRules.LEVEL)
        .filter(f -> given.pieces().get(f.piece()).kind() != Kind.JOIST)
        .filter(f -> f.extent() > FLAT_AREA)
        .map(f -> pieceId(f.piece()))
        .distinct()
        .toList();
  }

  private String pieceId(int piece) {
    return given.pieces().get(piece).id();
  }

  private Vec3 world(Vec3 p) {
    return given.frame().apply(p);
  }

  /** Adds up what ends where. */
  private final class Tally {
    private double area;
    private final Map<Integer, Map<Integer, Double>> byBay = new TreeMap<>();
    private final Map<Integer, List<List<Vec3>>> regions = new TreeMap<>();

    void add(Column column, Fate fate) {
      area += column.area();
      for (int i = 0; i < fate.ends(); i++) {
        int sink = fate.sink(i);
        byBay
            .computeIfAbsent(sink, s -> new TreeMap<>())
            .merge(column.catchment(), column.area() * fate.share(i), Double::sum);
        if (sinks.get(sink).outlet() < 0 && fate.share(i) > SHOWN) {
          double w = column.layers().isEmpty() ? 0 : column.layers().get(0).topAt();
          regions
              .computeIfAbsent(sink, s -> new ArrayList<>())
              .add(column.outline().stream().map(p -> world(new Vec3(p.x(), p.y(), w))).toList());
        }
      }
    }

    private double total(int sink) {
      return byBay.getOrDefault(sink, Map.of()).values().stream().mapToDouble(a -> a).sum();
    }

    double drained(List<Optional<LeakCause>> faults) {
      return byBay.keySet().stream()
          .filter(s -> sinks.get(s).outlet() >= 0 && faults.get(sinks.get(s).outlet()).isEmpty())
          .mapToDouble(this::total)
          .sum();
    }

    List<OutletShare> outlets(List<Optional<LeakCause>> faults) {
      List<OutletShare> shares = new ArrayList<>();
      for (int o = 0; o < faults.size(); o++) {
        Map<String, Double> bays = new TreeMap<>();
        Map<String, Double> gutters = new TreeMap<>();
        double sum = 0;
        for (int s : byBay.keySet()) {
          if (sinks.get(s).outlet() == o) {
            sum += total(s);
            gutters.merge(pieceId(sinks.get(s).piece()), total(s), Double::sum);
            byBay
                .getOrDefault(s, Map.of())
                .forEach((b, a) -> bays.merge(given.catchments().get(b).bay(), a, Double::sum));
          }
        }
        shares.add(new OutletShare(pieceId(places.outlets().get(o)), sum, bays, gutters));
      }
      return shares;
    }

    List<Leak> leaks(List<Optional<LeakCause>> faults) {
      List<Leak> leaks = new ArrayList<>();
      for (int s : byBay.keySet()) {
        Sink sink = sinks.get(s);
        Optional<LeakCause> cause = sink.outlet() >= 0 ? faults.get(sink.outlet()) : sink.cause();
        if (cause.isPresent() && total(s) > 0) {
          int piece = sink.outlet() >= 0 ? places.outlets().get(sink.outlet()) : sink.piece();
          leaks.add(
              new Leak(
                  given.field(),
                  sink.bay() < 0 ? "" : given.catchments().get(sink.bay()).bay(),
                  cause.get(),
                  world(sink.at()),
                  total(s),
                  piece < 0 ? List.of() : List.of(pieceId(piece)),
                  regions.getOrDefault(s, List.of())));
        }
      }
      leaks.sort(
          Comparator.comparing(Leak::cause)
              .thenComparing(Comparator.comparingDouble(Leak::area).reversed()));
      return leaks;
    }
  }
}
