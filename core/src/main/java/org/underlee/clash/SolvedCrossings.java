package org.underlee.clash;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.underlee.bay.Bay;
import org.underlee.bay.Crossing;
import org.underlee.bay.FieldBays;
import org.underlee.bay.Way;
import org.underlee.framing.BuildingElement;
import org.underlee.layout.PartKind;

/**
 * Crossings that the layout already deals with: a pipe that goes through a collar piece. What is
 * near to the pieces around its hole is no issue; what runs into them is.
 *
 * @param solved bay and thing
 */
record SolvedCrossings(Set<String> solved) {
  static SolvedCrossings of(List<FieldBays> fields, List<Ours> parts) {
    Set<String> collared = new HashSet<>();
    for (Ours part : parts) {
      if (part.kind() == PartKind.COLLAR_PIECE) {
        collared.add(part.bay());
      }
    }
    Set<String> solved = new HashSet<>();
    for (FieldBays field : fields) {
      for (Bay bay : field.bays()) {
        String name = field.field().id() + "/" + bay.id();
        if (collared.contains(name)) {
          bay.crossings().stream()
              .filter(c -> c.way() == Way.THROUGH)
              .forEach(c -> add(name, c, solved));
        }
      }
    }
    return new SolvedCrossings(Set.copyOf(solved));
  }

  private static void add(String bay, Crossing crossing, Set<String> solved) {
    solved.add(key(bay, crossing.element()));
    crossing.insulation().ifPresent(i -> solved.add(key(bay, i)));
  }

  boolean isSolved(Ours part, BuildingElement thing) {
    return part.isInBay() && solved.contains(key(part.bay(), thing));
  }

  private static String key(String bay, BuildingElement element) {
    return bay + "\n" + element.file().orElse("") + "\n" + element.instance();
  }
}
