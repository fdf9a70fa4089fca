package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Subject;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * What a finding says of one of its subjects: it is accepted or not by itself.
 *
 * @param key the same for the same rule, subject and words, whatever the numbers
 * @param text with its numbers, in metric units
 * @param past how far past its limit, SI
 */
record Told(String key, String text, OptionalDouble past) {
  private static final String NUMBER = "…";

  /** For each subject; one for a finding that is about none. */
  static List<Told> of(Finding finding) {
    if (finding.subjects().isEmpty()) {
      return List.of(of(finding, finding.place().globalId().orElse(""), past(finding)));
    }
    List<Told> all = new ArrayList<>();
    for (Subject s : finding.subjects()) {
      all.add(of(finding.about(s), (s.group() + " " + s.name()).strip(), past(finding, s)));
    }
    return all;
  }

  private static Told of(Finding finding, String about, OptionalDouble past) {
    String key = finding.rule().id() + " " + about + ": " + withoutNumbers(finding.words());
    return new Told(key, finding.message(), past);
  }

  private static OptionalDouble past(Finding finding) {
    return finding.measure().stream()
        .mapToDouble(m -> Math.abs(m.measured().si() - m.limit().si()))
        .findFirst();
  }

  private static OptionalDouble past(Finding finding, Subject subject) {
    return finding
        .measure()
        .flatMap(m -> subject.measured().map(q -> Math.abs(q.si() - m.limit().si())))
        .map(OptionalDouble::of)
        .orElseGet(() -> past(finding));
  }

  private static String withoutNumbers(Words words) {
    Object[] parts =
        words.parts().stream()
            .map(
                p ->
                    p instanceof Quantity
                        ? NUMBER
                        : p instanceof Words inner ? withoutNumbers(inner) : p)
            .toArray();
    return Words.of(words.template(), parts).toString();
  }

  /** Older files kept what was accepted by its rule and all that it said. */
  static String oldKey(Finding finding) {
    return finding.rule().id() + ": " + finding.message();
  }

  /** Whether it may have been kept so with other numbers. */
  static boolean isOldKey(String key, Finding finding) {
    return key.matches(Pattern.quote(finding.rule().id() + ": ") + pattern(finding.sentence()));
  }

  private static String pattern(Words words) {
    Object[] parts =
        words.parts().stream()
            .map(
                p ->
                    p instanceof Quantity
                        ? ".+?"
                        : p instanceof Words inner ? pattern(inner) : Pattern.quote(p.toString()))
            .toArray();
    StringBuilder all = new StringBuilder();
    int done = 0;
    for (Object part : parts) {
      int slot = words.template().indexOf("%s", done);
      all.append(Pattern.quote(words.template().substring(done, slot))).append(part);
      done = slot + 2;
    }
    return all.append(Pattern.quote(words.template().substring(done))).toString();
  }
}
