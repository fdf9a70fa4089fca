package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.finding.Finding;
import org.underlee.finding.Place;
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
    List<List<Member>> sets = JoistSets.find(level, tolerance);
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
        decks, Roles.give(decks, members, posts), source.notMeasured(), findings(decks));
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

  private static List<Finding> findings(List<Deck> decks) {
    List<Finding> findings = new ArrayList<>();
    if (decks.isEmpty()) {
      findings.add(
          Finding.of(
              FramingRules.NO_JOISTS,
              Place.NOWHERE,
              "No joists were found: no three level bars of one depth lie side by side less than "
                  + Math.round(Field.WIDEST_BAY * 1000)
                  + " mm apart.",
              "Check that the model holds the framing as beams or members with bodies. Where it has"
                  + " the deck as a slab only, say which joists to assume with --assume."));
    }
    for (Deck deck : decks) {
      findings.addAll(WideGaps.in(deck));
      for (Field field : deck.fields()) {
        if (field.fallAssumed()) {
          findings.add(fallAssumed(field));
        }
      }
    }
    return findings;
  }

  private static Finding fallAssumed(Field field) {
    return Finding.of(
        FramingRules.FALL_ASSUMED,
        field.lines().get(0).plies().get(0).element().place(),
        field.id()
            + ": nothing in the model tells which end is the house side; the fall is assumed.",
        "Put the house wall in the model, or call the member on the house side a ledger.");
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
