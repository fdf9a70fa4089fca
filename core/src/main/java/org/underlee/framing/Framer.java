package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.geom.Box;
import org.underlee.geom.Tolerance;

/**
 * Recognises deck framing in any model, from geometry first; names only add confidence.
 *
 * <p>Story: measure the bars; gather joists into sets; for each set find what holds it, which way
 * it falls, its lines; gather fields of one level into decks; give every member a role with its
 * reason.
 */
public final class Framer {
  /** Fields whose tops differ by less than this are one walking level. */
  private static final double SAME_LEVEL = 0.01;

  private final List<BuildingElement> elements;
  private final ElementSource source;

  private Framer(ElementSource source) {
    this.source = source;
    this.elements = source.elements();
  }

  public static Framing frame(ElementSource source) {
    return new Framer(source).recognise();
  }

  private Framing recognise() {
    Members members = Members.of(elements);
    Tolerance tolerance = Tolerance.forCoordinates(magnitude());
    List<Member> level = members.level().toList();
    Posts posts = Posts.of(members.upright().toList());
    HouseWalls walls = new HouseWalls(elements);
    Set<Member> sleepers = Sleepers.onSlabs(level, elements);
    JoistSets.Found found =
        JoistSets.find(level.stream().filter(m -> !sleepers.contains(m)).toList(), tolerance);
    List<List<Member>> sets = found.sets();
    Set<Member> lying = new LinkedHashSet<>(found.lyingAcross());
    level.stream().filter(sleepers::contains).forEach(lying::add);
    FieldFinder finder =
        new FieldFinder(
            new MemberIndex(members.all()),
            new MemberIndex(level),
            posts,
            walls,
            sets.stream().flatMap(List::stream).collect(Collectors.toUnmodifiableSet()),
            tolerance);
    List<Field> fields = finder.findAll(sets);
    List<Deck> decks = decks(fields, walls);
    return new Framing(
        decks,
        Roles.give(decks, members, posts, lying),
        source.notMeasured(),
        FramingFindings.of(decks));
  }

  private double magnitude() {
    Box all = Box.around(elements.stream().map(e -> e.shape().bounds()).toList());
    return all.isEmpty() ? 0 : Math.max(all.min().length(), all.max().length());
  }

  private static List<Deck> decks(List<Field> fields, HouseWalls walls) {
    Map<Field, List<Field>> levels = new LinkedHashMap<>();
    for (Field field : byHeight(fields)) {
      levels.entrySet().stream()
          .filter(e -> isSameLevel(e.getKey(), field))
          .findFirst()
          .ifPresentOrElse(
              e -> e.getValue().add(field),
              () -> levels.put(field, new ArrayList<>(List.of(field))));
    }
    List<Deck> decks = new ArrayList<>();
    for (List<Field> level : levels.values()) {
      decks.add(deck("deck-" + (decks.size() + 1), level, walls));
    }
    return decks;
  }

  private static List<Field> byHeight(List<Field> fields) {
    List<Field> sorted = new ArrayList<>(fields);
    sorted.sort(
        Comparator.comparingLong((Field f) -> -Math.round(f.top() / SAME_LEVEL))
            .thenComparingDouble(f -> -Math.round(f.joistLength() / SAME_LEVEL))
            .thenComparing(Framer::firstId));
    return sorted;
  }

  private static String firstId(Field field) {
    return field.lines().stream()
        .flatMap(l -> l.plies().stream())
        .map(Member::id)
        .min(String::compareTo)
        .orElse("");
  }

  private static boolean isSameLevel(Field a, Field b) {
    return Math.abs(a.top() - b.top()) < SAME_LEVEL && a.storey().equals(b.storey());
  }

  private static Deck deck(String id, List<Field> level, HouseWalls walls) {
    List<Field> named = new ArrayList<>();
    for (Field field : level) {
      named.add(field.withId(id + "/field-" + (named.size() + 1)));
    }
    Field first = named.get(0);
    return new Deck(id, first.storey(), first.top(), Outside.of(first, walls), named);
  }

  /**
   * Instance numbers of the members that carry a role, for callers that look for anything else. Not
   * GlobalIds: a model may hold one twice.
   */
  public static Set<Long> framingInstances(Framing framing) {
    return framing.roles().stream()
        .map(r -> r.member().element().instance())
        .collect(Collectors.toUnmodifiableSet());
  }
}
