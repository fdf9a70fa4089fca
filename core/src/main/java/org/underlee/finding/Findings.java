package org.underlee.finding;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Finding.Subject;
import org.underlee.units.Lengths.UnitSystem;

/** Lists of findings as people want to read them. */
public final class Findings {
  /** By what people read: numbers that look alike are alike. */
  private record Cause(Rule rule, String words, Optional<String> limit, Optional<String> fix) {
    static Cause of(Finding f) {
      return new Cause(
          f.rule(),
          f.words().toString(),
          f.measure().map(m -> m.limit().in(UnitSystem.METRIC)),
          f.fix().map(x -> x.words() + x.action().map(Fix.Action::typed).orElse("")));
    }
  }

  private Findings() {}

  /**
   * Findings that have one cause as one, in the order of the first of each: those of one rule with
   * the same words, limit and fix, which differ in their subjects only.
   */
  public static List<Finding> grouped(Collection<Finding> findings) {
    Map<Object, Finding> groups = new LinkedHashMap<>();
    int alone = 0;
    for (Finding finding : findings) {
      Object key = finding.subjects().isEmpty() ? Integer.valueOf(alone++) : Cause.of(finding);
      groups.merge(key, finding, Findings::joined);
    }
    return List.copyOf(groups.values());
  }

  private static Finding joined(Finding a, Finding b) {
    List<Subject> subjects = new ArrayList<>(a.subjects());
    subjects.addAll(b.subjects());
    return new Finding(
        a.rule(), subjects, a.words(), a.place(), worse(a.measure(), b.measure()), a.fix());
  }

  /** The one further from the limit that both have. */
  private static Optional<Measure> worse(Optional<Measure> a, Optional<Measure> b) {
    return a.flatMap(first -> b.map(second -> past(first) >= past(second) ? first : second));
  }

  private static double past(Measure m) {
    return Math.abs(m.measured().si() - m.limit().si());
  }
}
