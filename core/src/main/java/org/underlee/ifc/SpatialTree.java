package org.underlee.ifc;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.framing.Storey;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/**
 * The storeys, and which one holds an element: directly, through a space, or as part of a whole.
 */
final class SpatialTree {
  private static final String STOREY = "IFCBUILDINGSTOREY";

  private final Relations relations;
  private final Map<Long, Storey> storeys = new LinkedHashMap<>();
  private final List<Finding> findings = new ArrayList<>();

  SpatialTree(StepFile step, Relations relations, Placements placements, double metresPerUnit) {
    this.relations = relations;
    for (int index : step.ofKeyword(STOREY)) {
      StepInstance storey = step.decode(index);
      double elevation = elevation(storey, placements, metresPerUnit);
      storeys.put(
          storey.id(),
          new Storey(
              storey.optionalText(0).orElse(""), storey.optionalText(2).orElse(""), elevation));
    }
  }

  /** The height of its placement; of its Elevation attribute when that cannot be read. */
  private double elevation(StepInstance storey, Placements placements, double metresPerUnit) {
    double attribute = storey.optionalNumber(9).orElse(0) * metresPerUnit;
    if (storey.isOmitted(5)) {
      return attribute;
    }
    try {
      return placements.world(storey.ref(5)).origin().z();
    } catch (InputException e) {
      findings.add(
          Finding.of(
              IfcRules.STOREY_UNPLACED, e.place(), String.valueOf(e.getMessage()), e.advice()));
      return attribute;
    }
  }

  List<Storey> storeys() {
    return List.copyOf(storeys.values());
  }

  /** A circle of parts and wholes ends the search; the element then has no storey. */
  Optional<Storey> storeyOf(long element) {
    Set<Long> seen = new HashSet<>();
    OptionalLong at = OptionalLong.of(element);
    while (at.isPresent() && seen.add(at.getAsLong())) {
      Storey storey = storeys.get(at.getAsLong());
      if (storey != null) {
        return Optional.of(storey);
      }
      OptionalLong container = relations.container(at.getAsLong());
      at = container.isPresent() ? container : relations.whole(at.getAsLong());
    }
    return Optional.empty();
  }

  List<Finding> findings() {
    return List.copyOf(findings);
  }
}
