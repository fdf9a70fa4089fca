package org.underlee.framing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.underlee.finding.Finding;
import org.underlee.finding.Place;

/** What the user said that names nothing in the model, or could not be followed. */
final class ToldFindings {
  private ToldFindings() {}

  static List<Finding> of(Told told, List<BuildingElement> elements, Framing framing) {
    Map<String, BuildingElement> byId = new LinkedHashMap<>();
    elements.forEach(e -> byId.putIfAbsent(e.globalId(), e));
    List<Finding> findings = new ArrayList<>();
    for (String id : told.globalIds()) {
      if (!byId.containsKey(id)) {
        findings.add(stale(id));
      }
    }
    told.rolesInOrder()
        .forEach(
            (id, role) -> {
              BuildingElement element = byId.get(id);
              if (element != null
                  && framing.roleOf(id).filter(given -> fits(role, given)).isEmpty()) {
                findings.add(notFollowed(element, role, framing));
              }
            });
    for (Map.Entry<String, Boolean> one : new java.util.TreeMap<>(told.outside()).entrySet()) {
      if (byId.containsKey(one.getKey()) && framing.roleOf(one.getKey()).isEmpty()) {
        findings.add(noDeck(byId.get(one.getKey())));
      }
    }
    return findings;
  }

  /** A trimmer is a joist. */
  private static boolean fits(Role told, Role given) {
    return told == given || (told == Role.JOIST && given == Role.TRIMMER);
  }

  private static Finding stale(String id) {
    return Finding.of(
        FramingRules.OVERRIDE_STALE,
        Place.NOWHERE.withGlobalId(id),
        "The overrides file says something of " + id + ", which is no element with a body.",
        "Look whether the element was deleted or exported under another GlobalId, and correct the"
            + " file.");
  }

  private static Finding notFollowed(BuildingElement element, Role role, Framing framing) {
    String found =
        framing.roleOf(element.globalId()).map(r -> "a " + r.word()).orElse("no framing");
    return Finding.of(
        FramingRules.OVERRIDE_NOT_FOLLOWED,
        element.place(),
        "The overrides file calls it a "
            + role.word()
            + ", but where it stands it is "
            + found
            + ".",
        "Correct the file, or the element in the model.");
  }

  private static Finding noDeck(BuildingElement element) {
    return Finding.of(
        FramingRules.OVERRIDE_NOT_FOLLOWED,
        element.place(),
        "The overrides file says whether its deck is outside, but it belongs to no deck.",
        "Name a joist of the deck that is meant.");
  }
}
