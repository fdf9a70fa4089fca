package org.underlee.server.service;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;

/**
 * How the service works in one project, as the service's description there says: {@code report;
 * kit=formed-aluminium; rain=150mm/h; deck=deck-1}. Each may be left out.
 *
 * @param report whether to write a report only, and no revision
 */
record Settings(boolean report, Kit kit, Storm storm, Scope scope) {
  private static final List<String> KNOWN = List.of("report", "kit", "rain", "deck");

  /**
   * Reads a description.
   *
   * @throws IllegalArgumentException when a word in it is not understood
   */
  static Settings parse(String description) {
    Map<String, String> words = new LinkedHashMap<>();
    for (String part : description.split(";", -1)) {
      String[] pair = part.strip().split("=", 2);
      String name = pair[0].strip().toLowerCase(Locale.ROOT);
      if (!name.isEmpty() && !KNOWN.contains(name)) {
        throw new IllegalArgumentException(
            "\""
                + name
                + "\" in the service's description is no setting; there are: "
                + String.join(", ", KNOWN));
      }
      words.put(name, pair.length > 1 ? pair[1].strip() : "");
    }
    return new Settings(
        words.containsKey("report"),
        Optional.ofNullable(words.get("kit")).map(KitReader::named).orElseGet(KitReader::builtIn),
        storm(Optional.ofNullable(words.get("rain")).orElse(RainData.ANYWHERE)),
        Optional.ofNullable(words.get("deck"))
            .map(d -> new Scope(Optional.of(d)))
            .orElse(Scope.OUTSIDE));
  }

  private static Storm storm(String rain) {
    RainData data = RainData.builtIn();
    return rain.equals(RainData.ANYWHERE)
        ? data.service(rain)
        : data.meant(rain)
            .orElseThrow(
                () -> new IllegalArgumentException("rain=" + rain + ": write it like 150mm/h"));
  }
}
