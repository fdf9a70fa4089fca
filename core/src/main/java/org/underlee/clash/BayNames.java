package org.underlee.clash;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** Names of bays and joist lines in their order, with runs in short: {@code B2, B4 to B9, J5}. */
final class BayNames {
  private BayNames() {}

  private record Name(String letter, int number) {
    static Name of(String path) {
      String last = path.substring(path.lastIndexOf('/') + 1);
      String digits = last.replaceAll("\\D", "");
      return digits.isEmpty() || digits.length() > 6
          ? new Name(last, -1)
          : new Name(last.replaceAll("\\d", ""), Integer.parseInt(digits));
    }

    @Override
    public String toString() {
      return number < 0 ? letter : letter + number;
    }
  }

  /** Of one field or of several; the last step of each path is its name. */
  static String inShort(Collection<String> paths) {
    Map<String, TreeSet<Name>> groups = new LinkedHashMap<>();
    Comparator<Name> order = Comparator.comparing(Name::letter).thenComparingInt(Name::number);
    TreeSet<Name> all = new TreeSet<>(order);
    paths.forEach(p -> all.add(Name.of(p)));
    all.forEach(n -> groups.computeIfAbsent(n.letter, l -> new TreeSet<>(order)).add(n));
    List<String> words = new ArrayList<>();
    groups.values().forEach(g -> runs(List.copyOf(g), words));
    return String.join(", ", words);
  }

  private static void runs(List<Name> names, List<String> words) {
    int from = 0;
    for (int i = 0; i < names.size(); i++) {
      boolean ends = i + 1 == names.size() || names.get(i + 1).number != names.get(i).number + 1;
      if (ends) {
        int length = i - from + 1;
        words.add(
            names.get(from)
                + (length == 1 ? "" : length == 2 ? ", " : " to ")
                + (length == 1 ? "" : names.get(i)));
        from = i + 1;
      }
    }
  }
}
