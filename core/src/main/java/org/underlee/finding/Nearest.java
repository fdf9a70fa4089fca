package org.underlee.finding;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Names that a person may have meant by a text that is none of them. */
public final class Nearest {
  /** Of so many letters one may be wrong; two may be in any name. */
  private static final int LETTERS_FOR_A_SLIP = 4;

  private static final int SLIPS = 2;

  private Nearest() {}

  /** All the names, the one first that is least far from the text. */
  public static List<String> first(String text, Collection<String> names) {
    return names.stream()
        .sorted(
            Comparator.comparingInt((String n) -> changes(low(n), low(text)))
                .thenComparing(Comparator.naturalOrder()))
        .toList();
  }

  /** Those that the text begins, or that differ from it by a slip, the nearest first. */
  public static List<String> meant(String text, Collection<String> names) {
    return first(text, names).stream().filter(n -> isSlip(low(text), low(n))).toList();
  }

  private static boolean isSlip(String text, String name) {
    int slips = Math.max(SLIPS, text.length() / LETTERS_FOR_A_SLIP);
    return !text.isEmpty()
        && (name.startsWith(text) || changes(text, name) <= Math.min(slips, text.length() - 1));
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
