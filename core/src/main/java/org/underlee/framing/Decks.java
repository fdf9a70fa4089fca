package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.finding.StopSign;
import org.underlee.geom.Vec3;

/**
 * Gathers fields into decks: one walking level of one storey, all outside or all not. Fields that
 * share what holds them are one level too when their tops meet there, as on a deck that slopes.
 */
final class Decks {
  /** Fields whose tops differ by less than this are one walking level. */
  private static final double SAME_LEVEL = 0.01;

  private Decks() {}

  private record Judged(Field field, Deck.Judgement outside, double top) {}

  static List<Deck> of(List<Field> fields, Outside outside) {
    StopSign stop = StopSign.here();
    return gathered(
        byHeight(
            fields.parallelStream()
                .peek(f -> stop.obey())
                .map(f -> new Judged(f, outside.of(f), f.top()))
                .toList()));
  }

  private static List<Deck> gathered(List<Judged> fields) {
    List<List<Judged>> levels = new ArrayList<>();
    for (Judged field : fields) {
      List<List<Judged>> own =
          levels.stream().filter(l -> l.stream().anyMatch(f -> isSameDeck(f, field))).toList();
      List<Judged> all = own.isEmpty() ? new ArrayList<>() : own.get(0);
      own.stream().skip(1).forEach(all::addAll);
      all.add(field);
      levels.removeAll(own.isEmpty() ? List.of() : own.subList(1, own.size()));
      if (own.isEmpty()) {
        levels.add(all);
      }
    }
    List<Deck> decks = new ArrayList<>();
    for (List<Judged> level : levels) {
      decks.add(deck("deck-" + (decks.size() + 1), byHeight(level)));
    }
    return decks;
  }

  private static boolean isSameDeck(Judged a, Judged b) {
    return a.outside.value() == b.outside.value()
        && a.field.storey().equals(b.field.storey())
        && (Math.abs(a.top - b.top) < SAME_LEVEL || topsMeet(a.field, b.field));
  }

  private static boolean topsMeet(Field a, Field b) {
    Set<Member> shared = bars(a).collect(Collectors.toSet());
    return bars(b)
        .filter(shared::contains)
        .map(m -> m.box().centre())
        .anyMatch(p -> Math.abs(topAt(a, p) - topAt(b, p)) < SAME_LEVEL);
  }

  /** What holds the joists, and the joists: a field may start at the last joist of another. */
  private static Stream<Member> bars(Field field) {
    return Stream.concat(
        Stream.of(field.high(), field.low(), field.dropBeams())
            .flatMap(List::stream)
            .map(Support::member),
        field.lines().stream().flatMap(l -> l.plies().stream()));
  }

  /** Height of the walking level beside a place: of the line that is nearest to it. */
  private static double topAt(Field field, Vec3 place) {
    Vec3 p = field.frame().toLocal(place);
    JoistLine nearest =
        field.lines().stream()
            .min(Comparator.comparingDouble(l -> Math.abs(l.centre(p.y()) - p.x())))
            .orElseThrow();
    return field.frame().origin().z() + nearest.top(p.y());
  }

  private static List<Judged> byHeight(List<Judged> fields) {
    List<Judged> sorted = new ArrayList<>(fields);
    sorted.sort(
        Comparator.comparingLong((Judged f) -> -Math.round(f.top / SAME_LEVEL))
            .thenComparing(f -> !f.outside.value())
            .thenComparingDouble(f -> -Math.round(f.field.joistLength() / SAME_LEVEL))
            .thenComparing(f -> firstId(f.field)));
    return sorted;
  }

  private static String firstId(Field field) {
    return field.lines().stream()
        .flatMap(l -> l.plies().stream())
        .map(Member::id)
        .min(String::compareTo)
        .orElse("");
  }

  private static Deck deck(String id, List<Judged> level) {
    List<Field> named = new ArrayList<>();
    for (Judged judged : level) {
      named.add(judged.field.withId(id + "/field-" + (named.size() + 1)));
    }
    Field first = named.get(0);
    return new Deck(id, first.storey(), first.top(), judgement(level), named);
  }

  /** The reasons of all fields, each once with the fields it holds for. */
  private static Deck.Judgement judgement(List<Judged> level) {
    Map<String, List<String>> reasons = new LinkedHashMap<>();
    for (int i = 0; i < level.size(); i++) {
      reasons
          .computeIfAbsent(level.get(i).outside.why(), w -> new ArrayList<>())
          .add("field-" + (i + 1));
    }
    String why =
        reasons.entrySet().stream()
            .map(
                e ->
                    reasons.size() == 1
                        ? e.getKey()
                        : String.join(", ", e.getValue()) + ": " + e.getKey())
            .collect(Collectors.joining(". "));
    return new Deck.Judgement(level.get(0).outside.value(), why);
  }
}
