package org.underlee.finding;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.underlee.finding.Finding.Subject;
import org.underlee.units.Words;

/** Names what a finding is about, the group once for all of its own. */
final class SubjectNames {
  private SubjectNames() {}

  /** {@code deck-1/field-1 B3 (571 mm), B4 (602 mm); deck-1/field-2 B1}. */
  static Words of(List<Subject> subjects) {
    Map<String, List<Words>> groups = new LinkedHashMap<>();
    for (Subject s : subjects) {
      groups.computeIfAbsent(s.group(), g -> new ArrayList<>()).add(name(s));
    }
    List<Words> all = new ArrayList<>();
    groups.forEach((g, names) -> all.add(Words.of("%s%s", g, Words.join(",", names))));
    return Words.join("; ", all);
  }

  private static Words name(Subject s) {
    String name = s.name().isEmpty() ? "" : " " + s.name();
    return s.measured().map(m -> Words.of("%s (%s)", name, m)).orElseGet(() -> Words.plain(name));
  }
}
