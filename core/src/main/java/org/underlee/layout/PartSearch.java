package org.underlee.layout;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;

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
    return parts.stream()
        .map(Part::label)
        .sorted(
            Comparator.comparingInt((String l) -> changes(low(l), low(text)))
                .thenComparing(Comparator.naturalOrder()))
        .limit(MOST_NEAR)
        .toList();
  }

  private static String low(String text) {
    return text.toLowerCase(Locale.ROOT);
  }

  /** The least number of letters to put in, leave out or replace (Levenshtein 1965). */
  static int changes(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replaced = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[b.length()];
  }
}
