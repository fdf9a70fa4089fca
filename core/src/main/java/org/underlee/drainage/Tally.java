package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.underlee.drainage.Sinks.Sink;
import org.underlee.geom.Vec3;

/** Adds up what ends where. */
final class Tally {
  /** A part of a column's rain smaller than this is no region of a leak. */
  private static final double SHOWN = 0.05;

  /** Areas that differ by less than this, m² (a square millimetre), are one. */
  private static final double SAME = 1e-6;

  private final DrainCase given;
  private final Places places;
  private final Sinks sinks;

  private double area;
  private double added;

  /** By sink, then by catchment: the area whose rain ends there. */
  private final List<double[]> byBay = new ArrayList<>();

  private final Map<Integer, List<List<Vec3>>> regions = new TreeMap<>();

  Tally(DrainCase given, Places places, Sinks sinks) {
    this.given = given;
    this.places = places;
    this.sinks = sinks;
  }

  double area() {
    return area;
  }

  /** Of other areas, m². */
  double added() {
    return added;
  }

  void add(Column column, Fate fate) {
    area += column.area();
    add(column, column.area(), fate);
  }

  /** Rain of another area that lands on a column. */
  void add(Arrival arrival, Column column, Fate fate) {
    added += arrival.area();
    add(column, arrival.area(), fate);
  }

  private void add(Column column, double rain, Fate fate) {
    for (int i = 0; i < fate.ends(); i++) {
      int sink = fate.sink(i);
      while (byBay.size() <= sink) {
        byBay.add(new double[given.catchments().size()]);
      }
      byBay.get(sink)[column.catchment()] += rain * fate.share(i);
      if (sinks.get(sink).outlet() < 0 && fate.share(i) > SHOWN) {
        regions.computeIfAbsent(sink, s -> new ArrayList<>()).add(region(column));
      }
    }
  }

  private List<Vec3> region(Column column) {
    double w = column.layers().length == 0 ? 0 : column.layers()[0].topAt();
    return column.outline().stream().map(p -> world(new Vec3(p.x(), p.y(), w))).toList();
  }

  private double total(int sink) {
    return Arrays.stream(byBay.get(sink)).sum();
  }

  double drained(List<Optional<LeakCause>> faults) {
    return IntStream.range(0, byBay.size())
        .filter(s -> sinks.get(s).outlet() >= 0 && faults.get(sinks.get(s).outlet()).isEmpty())
        .mapToDouble(this::total)
        .sum();
  }

  List<OutletShare> outlets() {
    List<OutletShare> shares = new ArrayList<>();
    for (int o = 0; o < places.outlets().size(); o++) {
      Map<String, Double> bays = new TreeMap<>();
      Map<String, Double> gutters = new TreeMap<>();
      for (int s = 0; s < byBay.size(); s++) {
        if (sinks.get(s).outlet() == o) {
          gutters.merge(pieceId(sinks.get(s).piece()), total(s), Double::sum);
          addBays(byBay.get(s), bays);
        }
      }
      double sum = gutters.values().stream().mapToDouble(a -> a).sum();
      shares.add(new OutletShare(pieceId(places.outlets().get(o)), sum, bays, gutters));
    }
    return shares;
  }

  private void addBays(double[] areas, Map<String, Double> bays) {
    for (int b = 0; b < areas.length; b++) {
      if (areas[b] > 0) {
        bays.merge(given.catchments().get(b).bay(), areas[b], Double::sum);
      }
    }
  }

  List<Leak> leaks(List<Optional<LeakCause>> faults) {
    List<Leak> leaks = new ArrayList<>();
    for (int s : inOrderOfBays()) {
      Sink sink = sinks.get(s);
      Optional<LeakCause> cause = sink.outlet() >= 0 ? faults.get(sink.outlet()) : sink.cause();
      if (cause.isPresent() && total(s) > 0) {
        int piece = sink.outlet() >= 0 ? places.outlets().get(sink.outlet()) : sink.piece();
        leaks.add(
            new Leak(
                given.field(),
                sink.bay() < 0 ? "" : given.catchments().get(sink.bay()).bay(),
                cause.get(),
                world(sinks.at(s)),
                total(s),
                piece < 0 ? List.of() : List.of(pieceId(piece)),
                regions.getOrDefault(s, List.of())));
      }
    }
    leaks.sort(
        Comparator.comparing(Leak::cause)
            .thenComparing(
                Comparator.comparingDouble((Leak l) -> Math.rint(l.area() / SAME)).reversed()));
    return leaks;
  }

  /** So that of leaks of one size the first bay's comes first, whatever the last digits are. */
  private int[] inOrderOfBays() {
    return IntStream.range(0, byBay.size())
        .boxed()
        .sorted(Comparator.comparingInt(s -> sinks.get(s).bay()))
        .mapToInt(s -> s)
        .toArray();
  }

  private String pieceId(int piece) {
    return given.pieces().get(piece).id();
  }

  private Vec3 world(Vec3 p) {
    return given.frame().apply(p);
  }
}
