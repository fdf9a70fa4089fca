package org.underlee.framing;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.finding.Finding;

/**
 * Weighs how sure a role is. A role by place alone leaves a doubt, and a name that agrees takes
 * most of it away ({@link Roles}); here each further piece of evidence multiplies the doubt, and is
 * told. The numbers are our own: they rank roles, they are no probabilities.
 */
final class Trust {
  /** Three lines may be chance; more are not. */
  private static final int FEW_LINES = 3;

  private static final double FEW = 3;
  private static final double HELD_ONCE = 2;
  private static final double BOARDED = 0.5;
  private static final double ON_WALL = 0.5;
  private static final double OTHER_NAME = 4;

  /** Nothing tells one reading from the other: however small the doubt was, it is even. */
  private static final double NO_TELLING = 1000;

  /** The most doubt that a role is given with: as likely as not. */
  private static final double EVEN = 0.5;

  /** Words that a member of another role is called by. "Beam" and "board" say too little. */
  private static final Map<Role, String> NAMES =
      new EnumMap<>(
          Map.of(
              Role.JOIST, "joist",
              Role.LEDGER, "ledger",
              Role.RIM, "rim",
              Role.HEADER, "header",
              Role.BLOCKING, "blocking",
              Role.POST, "post",
              Role.STRINGER, "stringer"));

  /** For each deck the fields that a member is a joist of, or bounds. */
  private final Map<String, Map<Member, List<Field>>> fields = new HashMap<>();

  private final Set<String> boarded;

  private Trust(List<Deck> decks, List<RoleGiven> roles) {
    decks.forEach(deck -> fields.put(deck.id(), byMember(deck)));
    boarded =
        roles.stream()
            .filter(r -> r.role() == Role.DECK_BOARD)
            .flatMap(r -> r.decks().stream())
            .collect(Collectors.toUnmodifiableSet());
  }

  /** The same roles, each as sure as the evidence makes it. */
  static List<RoleGiven> weigh(List<Deck> decks, List<RoleGiven> roles) {
    Trust trust = new Trust(decks, roles);
    return roles.stream().map(trust::weighed).toList();
  }

  private RoleGiven weighed(RoleGiven given) {
    if (given.member().element().isAssumed() || given.member().told().isPresent()) {
      return given;
    }
    double doubt = 1 - given.confidence();
    StringBuilder why = new StringBuilder(given.why());
    for (Map.Entry<String, Double> one : evidence(given).entrySet()) {
      doubt *= one.getValue();
      why.append("; ").append(one.getKey());
    }
    return given.with(1 - Math.min(doubt, EVEN), why.toString());
  }

  /** What else speaks for a role (a factor below 1) or against it (above 1). */
  private Map<String, Double> evidence(RoleGiven given) {
    Map<String, Double> evidence = new LinkedHashMap<>();
    List<Field> own =
        given.decks().stream()
            .sorted()
            .flatMap(
                d ->
                    fields
                        .getOrDefault(d, Map.of())
                        .getOrDefault(given.member(), List.of())
                        .stream())
            .toList();
    switch (given.role()) {
      case JOIST, TRIMMER -> joist(given, own, evidence);
      case LEDGER, RIM -> edge(given, own, evidence);
      default -> {
        // where it stands says all there is to say
      }
    }
    if (!otherName(given).isEmpty()) {
      evidence.put("though it is called like a " + otherName(given), OTHER_NAME);
    }
    return evidence;
  }

  private void joist(RoleGiven given, List<Field> own, Map<String, Double> evidence) {
    if (!own.isEmpty() && own.stream().allMatch(f -> f.lines().size() <= FEW_LINES)) {
      evidence.put("no more than three lines", FEW);
    }
    if (own.stream().noneMatch(Trust::isHeldAtBothEnds)) {
      evidence.put("nothing is found that holds one of its ends", HELD_ONCE);
    }
    if (given.decks().stream().anyMatch(boarded::contains)) {
      evidence.put("boards lie on its deck", BOARDED);
    }
  }

  private static void edge(RoleGiven given, List<Field> own, Map<String, Double> evidence) {
    if (!own.isEmpty() && own.stream().allMatch(Field::fallAssumed)) {
      evidence.put("nothing tells which end is the house side", NO_TELLING);
    } else if (given.why().contains("it is fixed to ")) {
      evidence.put("a wall is the house side", ON_WALL);
    }
  }

  private static boolean isHeldAtBothEnds(Field field) {
    int ends = (field.high().isEmpty() ? 0 : 1) + (field.low().isEmpty() ? 0 : 1);
    return ends + field.dropBeams().size() >= 2;
  }

  private static Map<Member, List<Field>> byMember(Deck deck) {
    Map<Member, List<Field>> fields = new HashMap<>();
    for (Field field : deck.fields()) {
      members(field)
          .distinct()
          .forEach(m -> fields.computeIfAbsent(m, k -> new ArrayList<>()).add(field));
    }
    return fields;
  }

  private static Stream<Member> members(Field field) {
    return Stream.concat(
        field.lines().stream().flatMap(l -> l.plies().stream()),
        Stream.concat(field.high().stream(), field.low().stream()).map(Support::member));
  }

  /** The other role whose word is in the member's name while its own is not; or empty. */
  private static String otherName(RoleGiven given) {
    Role read = given.role() == Role.TRIMMER ? Role.JOIST : given.role();
    if (given.member().isCalled(NAMES.getOrDefault(read, read.word()))) {
      return "";
    }
    return NAMES.entrySet().stream()
        .filter(n -> n.getKey() != read && given.member().isCalled(n.getValue()))
        .map(n -> n.getKey().word())
        .findFirst()
        .orElse("");
  }

  /** One note for all members that are read as one role and called like another. */
  static List<Finding> findings(List<RoleGiven> roles) {
    Map<String, List<RoleGiven>> disagreeing = new LinkedHashMap<>();
    for (RoleGiven given : roles) {
      String other = otherName(given);
      if (!other.isEmpty() && given.member().told().isEmpty() && !given.decks().isEmpty()) {
        disagreeing
            .computeIfAbsent(given.role().word() + "/" + other, k -> new ArrayList<>())
            .add(given);
      }
    }
    return disagreeing.values().stream().map(all -> disagree(all, otherName(all.get(0)))).toList();
  }

  private static Finding disagree(List<RoleGiven> all, String other) {
    RoleGiven first = all.get(0);
    return Finding.of(
        FramingRules.NAME_DISAGREES,
        first.member().element().place(),
        all.size()
            + (all.size() == 1 ? " member is" : " members are")
            + " read as "
            + first.role().word()
            + " by place ("
            + first.why()
            + "), but called like a "
            + other
            + ".",
        "Look at them in the plan. If the name is right, give the role in an overrides file.");
  }
}
