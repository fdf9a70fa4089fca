package org.underlee.framing;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * What a user says of elements, by GlobalId. It stands over what the geometry says.
 *
 * @param roles of members
 * @param notFraming elements that only look like framing
 * @param outside whether the deck that a member belongs to is outside
 * @param bothWays joists whose field falls both ways from a high line inside it
 * @param highLines by such joists, where the line is, metres from the field's high end; it is where
 *     the program puts it for those that are not among them
 */
public record Told(
    Map<String, Role> roles,
    Set<String> notFraming,
    Map<String, Boolean> outside,
    Set<String> bothWays,
    Map<String, Double> highLines) {
  public static final Told NOTHING = new Told(Map.of(), Set.of(), Map.of());

  /** How a role, or an outside, that the user gave is explained. */
  static final String WHY = "set right by hand";

  public Told {
    roles = Map.copyOf(roles);
    notFraming = Set.copyOf(notFraming);
    outside = Map.copyOf(outside);
    bothWays = Set.copyOf(bothWays);
    highLines = Map.copyOf(highLines);
  }

  /** Nothing of it falls both ways. */
  public Told(Map<String, Role> roles, Set<String> notFraming, Map<String, Boolean> outside) {
    this(roles, notFraming, outside, Set.of(), Map.of());
  }

  /** The same where the fields of these joists, and no others, fall both ways. */
  public Told fallingBothWays(Set<String> joists, Map<String, Double> lines) {
    return new Told(roles, notFraming, outside, joists, lines);
  }

  /** Whether a joist of the field is said to fall both ways. */
  public boolean fallsBothWays(Field field) {
    return joists(field).anyMatch(j -> bothWays.contains(j) || highLines.containsKey(j));
  }

  /** Where its high line is to be, metres from its high end; each place that a joist is given. */
  public List<Double> highLines(Field field) {
    return joists(field)
        .flatMap(j -> Optional.ofNullable(highLines.get(j)).stream())
        .distinct()
        .sorted()
        .toList();
  }

  /** GlobalIds of a field's joists. */
  public static Stream<String> joists(Field field) {
    return field.lines().stream().flatMap(l -> l.plies().stream()).map(Member::id);
  }

  Optional<Role> roleOf(BuildingElement element) {
    return Optional.ofNullable(roles.get(element.globalId()));
  }

  boolean isFraming(BuildingElement element) {
    return !notFraming.contains(element.globalId());
  }

  /** What is said of the deck that holds one of these members, if it is said of one. */
  Optional<Boolean> outside(Stream<Member> members) {
    return members.flatMap(m -> Optional.ofNullable(outside.get(m.id())).stream()).findFirst();
  }

  /** Every GlobalId that something is said of, in order. */
  public Set<String> globalIds() {
    Set<String> all = new TreeSet<>(roles.keySet());
    all.addAll(notFraming);
    all.addAll(outside.keySet());
    all.addAll(bothWays);
    all.addAll(highLines.keySet());
    return all;
  }

  /** The roles in the order of their GlobalIds. */
  Map<String, Role> rolesInOrder() {
    return new TreeMap<>(roles);
  }
}
