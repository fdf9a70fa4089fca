package org.underlee.framing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.geom.Interval;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Gaps between joists that are too wide for a bay. Joists so far apart fall into two fields; when
 * the two are held by the same member, what lies between them is said, so that no part of a deck
 * goes unnamed.
 */
final class WideGaps {
  private WideGaps() {}

  static List<Finding> in(Deck deck) {
    List<Finding> findings = new ArrayList<>();
    Map<Member, TreeSet<Integer>> held = new HashMap<>();
    for (int i = 0; i < deck.fields().size(); i++) {
      int own = i;
      holders(deck.fields().get(i))
          .forEach(m -> held.computeIfAbsent(m, k -> new TreeSet<>()).add(own));
    }
    for (int i = 0; i < deck.fields().size(); i++) {
      Set<Integer> others = new TreeSet<>();
      int own = i;
      holders(deck.fields().get(i))
          .forEach(m -> others.addAll(held.getOrDefault(m, new TreeSet<>()).tailSet(own, false)));
      for (int j : others) {
        between(deck.fields().get(i), deck.fields().get(j)).ifPresent(findings::add);
      }
    }
    return findings;
  }

  private static Optional<Finding> between(Field a, Field b) {
    Interval first = across(a, a);
    Interval second = across(b, a);
    double gap = Math.max(second.from() - first.to(), first.from() - second.to());
    return gap > Field.WIDEST_BAY ? Optional.of(finding(a, b, gap)) : Optional.empty();
  }

  private static Stream<Member> holders(Field field) {
    return Stream.of(field.high(), field.low(), field.dropBeams())
        .flatMap(List::stream)
        .map(Support::member);
  }

  /** The stretch that a field's joists take, across the joists of another. */
  private static Interval across(Field field, Field frame) {
    double[] ends =
        field.lines().stream()
            .flatMap(l -> l.plies().stream())
            .map(p -> frame.shapeOf(p).across())
            .flatMap(i -> Stream.of(i.from(), i.to()))
            .mapToDouble(Double::doubleValue)
            .sorted()
            .toArray();
    return new Interval(ends[0], ends[ends.length - 1]);
  }

  private static Finding finding(Field a, Field b, double gap) {
    return Finding.measured(
        FramingRules.WIDE_GAP,
        b.lines().get(0).plies().get(0).element().place(),
        Words.of(
            "Between %s and %s the joists stand %s apart: no bay is taken to be there.",
            a.id(), b.id(), Quantity.length(gap)),
        Measure.lengths(gap, Field.WIDEST_BAY),
        "If it is no opening, have the missing joist drawn; if it is one, nothing is to be done.");
  }
}
