package org.underlee.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.underlee.check.GutterInRain;
import org.underlee.drainage.flow.ProofData;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.InputException;
import org.underlee.finding.StopSign;
import org.underlee.kit.Kit;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Layouter;
import org.underlee.layout.Layouting;
import org.underlee.layout.Layouting.Outcome;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;

/**
 * Lays the decks of a survey out again and again while a person decides: the deck at hand first,
 * the others after it by several threads, and no further once something else is asked for. What
 * does not depend on what is decided is kept. The end is that of {@link DeckRun#layOut}.
 *
 * <p>For one caller at a time.
 */
public final class FieldByField {
  /** What is asked for. */
  public record Wish(Scope scope, Kit kit, Storm storm) {}

  /** The one who asked. */
  public interface Watcher {
    /** Whether it is still wanted. */
    boolean goesOn();

    /**
     * Told the deck at hand, and then more and more.
     *
     * @param layout fields that are laid out; those that are not yet as they were before
     * @param done how many of all fields are laid out
     */
    void sees(Layout layout, int done, int all);
  }

  private final Survey survey;
  private final List<String> lowEnds;
  private Optional<Rained> rained = Optional.empty();

  /** What gutters carry of a rain: it remembers what it has worked out, whatever the fall is. */
  private record Rained(Storm storm, Wishes wishes, GutterInRain gutters) {
    boolean isFor(Storm other, Wishes asked) {
      return storm.equals(other)
          && wishes.onto().equals(asked.onto())
          && wishes.tables().equals(asked.tables());
    }
  }

  public FieldByField(Survey survey) {
    this.survey = survey;
    this.lowEnds = Layouter.lowEnds(survey.bays());
  }

  public Survey survey() {
    return survey;
  }

  /** As {@link Layouter#lowEnds}. */
  public List<String> lowEnds() {
    return lowEnds;
  }

  /**
   * Lays everything in scope out.
   *
   * @param before what is shown of fields until they are laid out
   * @param atHand the field whose deck comes first; the first deck's when empty or not in scope
   * @return empty when it was no longer wanted before it was done
   * @throws InputException as {@link DeckRun#layOut}
   */
  public Optional<Layout> layOut(
      Wish wish, Optional<Layout> before, Optional<String> atHand, Watcher watcher) {
    Layouting fields =
        Layouter.fieldByField(
            survey.framing(),
            survey.bays(),
            wish.scope,
            wish.kit,
            gutters(wish.storm, wish.scope.wishes()));
    StopSign stop = StopSign.here();
    Map<Integer, Outcome> done = new ConcurrentHashMap<>();
    Map<String, FieldLayout> old = byField(before);
    for (List<Integer> group : inGroups(fields, atHand)) {
      if (!watcher.goesOn()) {
        return Optional.empty();
      }
      group.parallelStream()
          .forEach(
              i -> {
                stop.obey();
                done.put(i, fields.layOut(i));
              });
      if (done.size() < fields.fields().size()) {
        watcher.sees(soFar(fields, done, old), done.size(), fields.fields().size());
      }
    }
    return Optional.of(fields.together(i -> outcome(done, i)));
  }

  private GutterInRain gutters(Storm storm, Wishes wishes) {
    Rained known =
        rained
            .filter(r -> r.isFor(storm, wishes))
            .orElseGet(
                () ->
                    new Rained(
                        storm,
                        wishes,
                        new GutterInRain(storm, ProofData.builtIn(), survey.elements(), wishes)));
    rained = Optional.of(known);
    return known.gutters;
  }

  private static Map<String, FieldLayout> byField(Optional<Layout> before) {
    Map<String, FieldLayout> old = new HashMap<>();
    before.ifPresent(l -> l.fields().forEach(f -> old.put(f.field(), f)));
    return old;
  }

  private static Outcome outcome(Map<Integer, Outcome> done, int field) {
    return Optional.ofNullable(done.get(field)).orElseThrow();
  }

  private static Layout soFar(
      Layouting fields, Map<Integer, Outcome> done, Map<String, FieldLayout> old) {
    List<String> names = fields.fields();
    return fields.together(
        i ->
            Optional.ofNullable(done.get(i))
                .orElseGet(
                    () -> new Outcome(Optional.ofNullable(old.get(names.get(i))), List.of())));
  }

  /** The deck at hand, then as many fields at a time as there are processors. */
  private static List<List<Integer>> inGroups(Layouting fields, Optional<String> atHand) {
    int all = fields.fields().size();
    int first = atHand.map(fields.fields()::indexOf).filter(i -> i >= 0).orElse(0);
    List<List<Integer>> groups = new ArrayList<>();
    if (all > 0) {
      Map<Boolean, List<Integer>> isFirst =
          IntStream.range(0, all)
              .boxed()
              .collect(Collectors.partitioningBy(i -> fields.deck(i).equals(fields.deck(first))));
      groups.add(isFirst.getOrDefault(true, List.of()));
      List<Integer> others = isFirst.getOrDefault(false, List.of());
      int size = Runtime.getRuntime().availableProcessors();
      for (int i = 0; i < others.size(); i += size) {
        groups.add(others.subList(i, Math.min(others.size(), i + size)));
      }
    }
    return groups;
  }
}
