package org.underlee.finding;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * One thing the program noticed.
 *
 * @param subjects the bays or parts it is about, where it is about some: each is named once, and
 *     findings that differ in these only are told as one ({@link Findings#grouped})
 * @param words what is the case; about each subject alike, with their names left out
 * @param measure the measured value against its limit, where there are numbers; the worst one where
 *     there are several
 * @param fix what a person can do about it
 */
public record Finding(
    Rule rule,
    List<Subject> subjects,
    Words words,
    Place place,
    Optional<Measure> measure,
    Optional<Fix> fix) {
  public Finding {
    subjects = List.copyOf(subjects);
  }

  /**
   * What a finding is about.
   *
   * @param group {@code deck-1/field-1}
   * @param name {@code B3}; empty for the group as a whole
   * @param measured its own number, where it has one
   */
  public record Subject(String group, String name, Place place, Optional<Quantity> measured) {}

  /** A measured value beside its limit. */
  public record Measure(Quantity measured, Quantity limit) {
    /** Two lengths, in metres. */
    boolean looksKeptIn(UnitSystem units) {
      return measured.si() != limit.si() && measured.in(units).equals(limit.in(units));
    }

    public static Measure lengths(double measured, double limit) {
      return new Measure(Quantity.length(measured), Quantity.length(limit));
    }
  }

  public static Finding of(Rule rule, Place place, Words words, Fix fix) {
    return new Finding(rule, List.of(), words, place, Optional.empty(), Optional.of(fix));
  }

  public static Finding of(Rule rule, Place place, Words words, String fix) {
    return of(rule, place, words, Fix.of(fix));
  }

  public static Finding of(Rule rule, Place place, String words, String fix) {
    return of(rule, place, Words.plain(words), fix);
  }

  public static Finding measured(Rule rule, Place place, Words words, Measure measure, Fix fix) {
    return new Finding(rule, List.of(), words, place, Optional.of(measure), Optional.of(fix));
  }

  public static Finding measured(
      Rule rule, Place place, String words, Measure measure, String fix) {
    return measured(rule, place, Words.plain(words), measure, fix);
  }

  public static Finding measured(Rule rule, Place place, Words words, Measure measure, String fix) {
    return measured(rule, place, words, measure, Fix.of(fix));
  }

  /** The same about one bay or part; its place is the subject's. */
  public Finding about(Subject subject) {
    return new Finding(rule, List.of(subject), words, subject.place(), measure, fix);
  }

  /** The same said in another language, as far as its phrases are known there. */
  public Finding translated(UnaryOperator<String> phrases) {
    return new Finding(
        rule,
        subjects,
        words.translated(phrases),
        place,
        measure,
        fix.map(f -> new Fix(f.words().translated(phrases), f.action())));
  }

  public Level level() {
    return rule.level();
  }

  /** What is the case, with what it is about: {@code deck-1/field-1 B3, B4: …}. */
  public Words sentence() {
    return subjects.isEmpty() ? words : Words.of("%s: %s", SubjectNames.of(subjects), words);
  }

  /** The sentence in metric units, as in files. */
  public String message() {
    return message(UnitSystem.METRIC);
  }

  /** The sentence; with exact measures where rounded ones would look as if the limit were kept. */
  public String message(UnitSystem units) {
    boolean alike = measure.filter(m -> m.looksKeptIn(units)).isPresent();
    return alike ? sentence().exactlyIn(units) : sentence().in(units);
  }
}
