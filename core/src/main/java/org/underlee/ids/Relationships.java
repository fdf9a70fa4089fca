package org.underlee.ids;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * What is related to what, by instance numbers. Positions of attributes are those of all schemas.
 */
final class Relationships {
  /** From a part to its whole. */
  record Way(String entity, int whole, int parts) {}

  private static final List<Way> WAYS =
      List.of(
          new Way("IFCRELAGGREGATES", 4, 5),
          new Way("IFCRELNESTS", 4, 5),
          new Way("IFCRELCONTAINEDINSPATIALSTRUCTURE", 5, 4),
          new Way("IFCRELASSIGNSTOGROUP", 6, 4),
          new Way("IFCRELVOIDSELEMENT", 4, 5),
          new Way("IFCRELFILLSELEMENT", 4, 5),
          new Way("IFCRELDEFINESBYTYPE", 5, 4),
          new Way("IFCRELDEFINESBYPROPERTIES", 5, 4),
          new Way("IFCRELASSOCIATESCLASSIFICATION", 5, 4),
          new Way("IFCRELASSOCIATESMATERIAL", 5, 4),
          // Of a material or a profile, which are no objects: its set of properties refers to it.
          new Way("IFCMATERIALPROPERTIES", -1, 3),
          new Way("IFCPROFILEPROPERTIES", -1, 3));

  private final Map<String, Map<Long, Set<Long>>> wholes = new HashMap<>();

  Relationships(StepFile file) {
    for (Way way : WAYS) {
      Map<Long, Set<Long>> of = wholes.computeIfAbsent(way.entity, k -> new HashMap<>());
      for (int i : file.ofKeyword(way.entity)) {
        StepInstance r = file.decode(i);
        Optional<Long> whole = way.whole < 0 ? Optional.of(r.id()) : reference(r.value(way.whole));
        whole.ifPresent(w -> parts(r.value(way.parts)).forEach(p -> add(of, p, w)));
      }
    }
  }

  private static void add(Map<Long, Set<Long>> of, long part, long whole) {
    of.computeIfAbsent(part, k -> new LinkedHashSet<>()).add(whole);
  }

  private static Optional<Long> reference(StepValue value) {
    return value instanceof StepValue.Reference r ? Optional.of(r.id()) : Optional.empty();
  }

  private static List<Long> parts(StepValue value) {
    return value instanceof StepValue.ListOf list
        ? list.values().stream().flatMap(v -> reference(v).stream()).toList()
        : reference(value).stream().toList();
  }

  /** What an instance is a part of, or defined by, through one kind of relationship. */
  Set<Long> of(String relationship, long part) {
    return wholes.getOrDefault(relationship, Map.of()).getOrDefault(part, Set.of());
  }
}
