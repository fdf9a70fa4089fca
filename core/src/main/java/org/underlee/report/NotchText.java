package org.underlee.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.underlee.layout.Part;
import org.underlee.units.Lengths.UnitSystem;

/** Lists notches, holes and slits, equal ones once, for the bench. */
final class NotchText {
  private NotchText() {}

  /** Empty where nothing is notched. */
  static String write(List<Part> parts, UnitSystem units) {
    Map<String, List<String>> labels = new LinkedHashMap<>();
    for (Part part : parts) {
      if (!part.cuts().isEmpty()) {
        labels.computeIfAbsent(cuts(part, units), k -> new ArrayList<>()).add(part.label());
      }
    }
    return labels.isEmpty()
        ? ""
        : labels.entrySet().stream()
            .map(
                e ->
                    String.format(
                        Locale.ROOT,
                        "  %3d x %s\n        %s\n",
                        e.getValue().size(),
                        e.getKey(),
                        String.join(" ", e.getValue())))
            .collect(Collectors.joining("", "\nTo notch and to hole\n", ""));
  }

  private static String cuts(Part part, UnitSystem units) {
    return part.cuts().stream()
        .map(c -> c.words().in(units))
        .collect(Collectors.joining("; ", part.kind().spoken() + ": ", ""));
  }
}
