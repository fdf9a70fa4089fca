package org.underlee.run;

import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Told;
import org.underlee.geom.Box;
import org.underlee.ifc.IfcModel;

/**
 * What a user said of elements, said of the same elements in a new export: by GlobalId, and where
 * that is gone, of the element of the same class that stands in the same place.
 */
final class Retold {
  /** Boxes of one element in two exports agree to this. */
  private static final double SAME_PLACE = 0.01;

  private final Map<String, BuildingElement> old = new HashMap<>();
  private final IfcModel export;
  private final Set<String> there = new HashSet<>();

  private Retold(IfcModel old, IfcModel export) {
    this.export = export;
    old.elements().forEach(e -> this.old.put(e.globalId(), e));
    export.elements().forEach(e -> there.add(e.globalId()));
  }

  static Overrides in(Overrides overrides, IfcModel old, IfcModel export) {
    Retold retold = new Retold(old, export);
    Told told = overrides.told();
    Set<String> notFraming = new HashSet<>();
    told.notFraming().forEach(id -> retold.now(id).ifPresent(notFraming::add));
    Set<String> bothWays = new HashSet<>();
    told.bothWays().forEach(id -> retold.now(id).ifPresent(bothWays::add));
    return new Overrides(
        overrides.file(),
        new Told(
            retold.keys(told.roles()),
            notFraming,
            retold.keys(told.outside()),
            bothWays,
            retold.keys(told.highLines())));
  }

  private <T> Map<String, T> keys(Map<String, T> given) {
    Map<String, T> all = new HashMap<>();
    given.forEach((id, value) -> now(id).ifPresent(n -> all.put(n, value)));
    return all;
  }

  private Optional<String> now(String id) {
    if (there.contains(id)) {
      return Optional.of(id);
    }
    return Optional.ofNullable(old.get(id))
        .flatMap(
            was ->
                export.elements().stream()
                    .filter(e -> e.ifcClass().equals(was.ifcClass()))
                    .filter(e -> apart(e, was) < SAME_PLACE)
                    .min(Comparator.comparingDouble(e -> apart(e, was))))
        .map(BuildingElement::globalId);
  }

  private static double apart(BuildingElement a, BuildingElement b) {
    Box p = a.shape().bounds();
    Box q = b.shape().bounds();
    return Math.max(p.min().distance(q.min()), p.max().distance(q.max()));
  }
}
