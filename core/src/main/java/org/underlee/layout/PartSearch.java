package org.underlee.layout;

import java.util.List;
import java.util.Locale;
import org.underlee.finding.Nearest;

/** Finds parts by what a person calls them. */
public final class PartSearch {
  private static final int MOST_NEAR = 5;

  private PartSearch() {}

  /**
   * The part with this id or label, in any case; else every part with the text in its id or label.
   */
  public static List<Part> find(List<Part> parts, String text) {
    String wanted = low(text);
    List<Part> exact =
        parts.stream()
            .filter(p -> low(p.id()).equals(wanted) || low(p.label()).equals(wanted))
            .toList();
    return exact.isEmpty()
        ? parts.stream()
            .filter(p -> low(p.id()).contains(wanted) || low(p.label()).contains(wanted))
            .toList()
        : exact;
  }

  /** Labels that are least far from a text that is none, nearest first. */
  public static List<String> near(List<Part> parts, String text) {
    List<String> labels = parts.stream().map(Part::label).toList();
    return Nearest.first(text, labels).stream().limit(MOST_NEAR).toList();
  }

  private static String low(String text) {
    return text.toLowerCase(Locale.ROOT);
  }
}
