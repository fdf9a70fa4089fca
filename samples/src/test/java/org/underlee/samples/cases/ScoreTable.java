package org.underlee.samples.cases;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** How many seeds of each case came out right, aspect by aspect, as a table in Markdown. */
final class ScoreTable {
  private static final class Row {
    private int seeds;
    private int right;
    private final Map<Aspect, Integer> wrong = new EnumMap<>(Aspect.class);
  }

  private final Map<String, Row> rows = new LinkedHashMap<>();

  void add(String name, Set<Aspect> wrong) {
    Row row = rows.computeIfAbsent(name, n -> new Row());
    row.seeds++;
    row.right += wrong.isEmpty() ? 1 : 0;
    wrong.forEach(a -> row.wrong.merge(a, 1, Integer::sum));
  }

  @Override
  public String toString() {
    StringBuilder out = new StringBuilder("| case | seeds | all right |");
    StringBuilder rule = new StringBuilder("|---|---:|---:|");
    for (Aspect aspect : Aspect.values()) {
      out.append(' ').append(aspect.word()).append(" |");
      rule.append("---:|");
    }
    out.append('\n').append(rule).append('\n');
    rows.forEach((name, row) -> out.append(line(name, row)));
    return out.toString();
  }

  private static String line(String name, Row row) {
    StringBuilder line = new StringBuilder("| " + name + " | " + row.seeds);
    line.append(" | ").append(percent(row.right, row.seeds)).append(" |");
    for (Aspect aspect : Aspect.values()) {
      int right = row.seeds - row.wrong.getOrDefault(aspect, 0);
      line.append(' ').append(percent(right, row.seeds)).append(" |");
    }
    return line.append('\n').toString();
  }

  private static String percent(int part, int whole) {
    return part == whole ? "100" : String.format(Locale.ROOT, "%.1f", 100.0 * part / whole);
  }
}
