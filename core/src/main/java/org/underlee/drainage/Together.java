package org.underlee.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Adds up the proofs of several fields. Where two fields fall away from one high line, each case
 * has the pieces of both: what is told of a piece is taken from its own field's case, but rain that
 * crosses the line is added to the outlet that it reaches.
 */
final class Together {
  private double area;
  private double added;
  private double drained;
  private final List<Leak> leaks = new ArrayList<>();
  private final List<OutletShare> outlets = new ArrayList<>();

  /** By outlet: rain that crosses a high line. */
  private final Map<String, OutletShare> crossing = new TreeMap<>();

  private final List<StandingWater> ponds = new ArrayList<>();
  private final List<StandingWater> blocked = new ArrayList<>();
  private final List<String> flat = new ArrayList<>();

  void add(DrainCase given, DrainProof proof) {
    area += proof.area();
    added += proof.added();
    drained += proof.drained();
    leaks.addAll(proof.leaks());
    proof.outlets().forEach(o -> add(given, o));
    proof.ponds().stream().filter(p -> given.isOwn(p.part())).forEach(ponds::add);
    proof.blocked().stream()
        .filter(b -> b.blocked().filter(given::isOwn).isPresent())
        .forEach(blocked::add);
    proof.flat().stream().filter(given::isOwn).forEach(flat::add);
  }

  private void add(DrainCase given, OutletShare share) {
    if (given.isOwn(share.outlet())) {
      outlets.add(share);
    } else if (share.area() > 0) {
      crossing.merge(share.outlet(), fromBeyond(given.field(), share), Together::sum);
    }
  }

  /** Bays of another field have its name. */
  private static OutletShare fromBeyond(String field, OutletShare share) {
    Map<String, Double> bays = new TreeMap<>();
    share.bays().forEach((bay, rain) -> bays.put(field + "/" + bay, rain));
    return new OutletShare(share.outlet(), share.area(), bays, share.gutters());
  }

  private static OutletShare sum(OutletShare a, OutletShare b) {
    return new OutletShare(
        a.outlet(), a.area() + b.area(), sum(a.bays(), b.bays()), sum(a.gutters(), b.gutters()));
  }

  private static Map<String, Double> sum(Map<String, Double> a, Map<String, Double> b) {
    Map<String, Double> sum = new TreeMap<>(a);
    b.forEach((name, value) -> sum.merge(name, value, Double::sum));
    return sum;
  }

  DrainProof proof() {
    List<OutletShare> all =
        outlets.stream()
            .map(o -> crossing.containsKey(o.outlet()) ? sum(o, crossing.get(o.outlet())) : o)
            .toList();
    return new DrainProof(area, added, drained, leaks, all, ponds, blocked, flat);
  }
}
