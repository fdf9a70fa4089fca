package org.underlee.ifc;

import java.util.ArrayList;
import java.util.List;
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
  private final IdPairs containers = new IdPairs();
  private final IdPairs wholes = new IdPairs();
  private final IdPairs types = new IdPairs();
  private final IdPairs materials = new IdPairs();
  private final IdPairs propertySets = new IdPairs();
  private final IdPairs openings = new IdPairs();
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
  private static void oneToMany(StepInstance relation, IdPairs pairs, long one, int manyAttribute) {
    for (long member : relation.refs(manyAttribute)) {
      pairs.add(member, one);
    }
  }

  private void properties(StepInstance relation) {
    long[] sets = relation.isReference(5) ? new long[] {relation.ref(5)} : relation.refs(5);
    for (long member : relation.refs(4)) {
      for (long set : sets) {
        propertySets.add(member, set);
      }
    }
  }

  private void opening(StepInstance relation) {
    openings.add(relation.ref(4), relation.ref(5));
  }

  /** The openings in an element. */
  List<Long> openings(long element) {
    return openings.all(element);
  }

  OptionalLong container(long id) {
    return containers.first(id);
  }

  /** What the instance is a part of, by aggregation or nesting. */
  OptionalLong whole(long id) {
    return wholes.first(id);
  }

  OptionalLong type(long id) {
    return types.first(id);
  }

  OptionalLong material(long id) {
    return materials.first(id);
  }

  List<Long> propertySets(long id) {
    return propertySets.all(id);
  }

  List<Finding> findings() {
    return List.copyOf(findings);
  }
}
