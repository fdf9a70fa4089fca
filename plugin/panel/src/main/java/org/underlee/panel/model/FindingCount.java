package org.underlee.panel.model;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.Level;

/**
 * Findings that nobody has accepted.
 *
 * @param worst of them
 */
public record FindingCount(int count, Optional<Level> worst) {
  static final FindingCount NONE = new FindingCount(0, Optional.empty());

  /** {@code 2 findings, the worst a warning}; empty when there are none. */
  public String words() {
    return worst
        .map(w -> count == 1 ? "1 finding, " + aOf(w) : count + " findings, the worst " + aOf(w))
        .orElse("");
  }

  private static String aOf(Level level) {
    return (level == Level.ERROR ? "an " : "a ") + level.word();
  }

  private FindingCount and(Level level) {
    return new FindingCount(
        count + 1, worst.filter(w -> w.compareTo(level) > 0).or(() -> Optional.of(level)));
  }

  /** For each thing, what was found about it or about something inside it, each once. */
  static Map<Item, FindingCount> of(List<FindingList.Row> rows, Map<Item, Item> above) {
    Map<Item, FindingCount> all = new HashMap<>();
    for (FindingList.Row row : rows) {
      if (!row.standing().isAccepted()) {
        Set<Item> touched = new HashSet<>();
        for (Item place : row.places()) {
          for (Item i = place; i != null; i = above.get(i)) {
            touched.add(i);
          }
        }
        touched.forEach(i -> all.put(i, all.getOrDefault(i, NONE).and(row.finding().level())));
      }
    }
    return all;
  }
}
