package org.underlee.ifc;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.function.Consumer;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/**
 * Who belongs to whom, from the relationship instances, each read once: containment in the spatial
 * structure, wholes and parts, types, property sets, materials. A relationship that cannot be read
 * is passed over with a finding.
 */
final class Relations {
  private final StepFile step;
  private final Map<Long, Long> containers = new HashMap<>();
  private final Map<Long, Long> wholes = new HashMap<>();
  private final Map<Long, Long> types = new HashMap<>();
  private final Map<Long, Long> materials = new HashMap<>();
  private final Map<Long, List<Long>> propertySets = new HashMap<>();
  private final Map<Long, List<Long>> openings = new HashMap<>();
  private final List<Finding> findings = new ArrayList<>();

  Relations(StepFile step) {
    this.step = step;
    each("IFCRELCONTAINEDINSPATIALSTRUCTURE", r -> oneToMany(r, containers, r.ref(5), 4));
    each("IFCRELAGGREGATES", r -> oneToMany(r, wholes, r.ref(4), 5));
    each("IFCRELNESTS", r -> oneToMany(r, wholes, r.ref(4), 5));
    each("IFCRELDEFINESBYTYPE", r -> oneToMany(r, types, r.ref(5), 4));
    each("IFCRELASSOCIATESMATERIAL", r -> oneToMany(r, materials, r.ref(5), 4));
    each("IFCRELDEFINESBYPROPERTIES", this::properties);
    each("IFCRELVOIDSELEMENT", this::opening);
  }

  private void each(String keyword, Consumer<StepInstance> read) {
    for (int index : step.ofKeyword(keyword)) {
      try {
        read.accept(step.decode(index));
      } catch (InputException e) {
        findings.add(
            Finding.of(
                IfcRules.RELATIONSHIP_UNREADABLE,
                e.place(),
                String.valueOf(e.getMessage()),
                e.advice()));
      }
    }
  }

  /** Where two relationships claim one member, the first in the file counts. */
  private static void oneToMany(
      StepInstance relation, Map<Long, Long> map, long one, int manyAttribute) {
    for (long member : relation.refs(manyAttribute)) {
      map.putIfAbsent(member, one);
    }
  }

  private void properties(StepInstance relation) {
    List<Long> sets = new ArrayList<>();
    if (relation.isReference(5)) {
      sets.add(relation.ref(5));
    } else {
      for (long set : relation.refs(5)) {
        sets.add(set);
      }
    }
    for (long member : relation.refs(4)) {
      propertySets.computeIfAbsent(member, m -> new ArrayList<>(1)).addAll(sets);
    }
  }

  private void opening(StepInstance relation) {
    openings.computeIfAbsent(relation.ref(4), e -> new ArrayList<>(1)).add(relation.ref(5));
  }

  /** The openings in an element. */
  List<Long> openings(long element) {
    return openings.getOrDefault(element, List.of());
  }

  OptionalLong container(long id) {
    return found(containers, id);
  }

  /** What the instance is a part of, by aggregation or nesting. */
  OptionalLong whole(long id) {
    return found(wholes, id);
  }

  OptionalLong type(long id) {
    return found(types, id);
  }

  OptionalLong material(long id) {
    return found(materials, id);
  }

  List<Long> propertySets(long id) {
    return propertySets.getOrDefault(id, List.of());
  }

  List<Finding> findings() {
    return List.copyOf(findings);
  }

  private static OptionalLong found(Map<Long, Long> map, long id) {
    Long value = map.get(id);
    return value == null ? OptionalLong.empty() : OptionalLong.of(value);
  }
}
