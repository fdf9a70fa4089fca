package org.underlee.run;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.framing.JoistLine;
import org.underlee.run.FramingMatch.Found;
import org.underlee.run.FramingMatch.Placed;

/**
 * Gives what was known again its old name, and what is new a name that the old export does not use,
 * so that a part of a bay that stays keeps its name and its GlobalId although bays came or went
 * beside it.
 */
final class KeptNames {
  private final List<FieldBays> old;
  private final Map<Placed, Found> matched;
  private final Map<JoistLine, JoistLine> oldLines;
  private final Map<String, String> names = new HashMap<>();

  private KeptNames(List<FieldBays> old, Map<Placed, Found> matched) {
    this.old = old;
    this.matched = matched;
    this.oldLines = FramingMatch.lines(matched);
  }

  /**
   * Names for a survey.
   *
   * @param old the bays of the old export with the names that they have
   * @param matched the old bay of each new one that has one
   */
  static Naming of(Survey survey, List<FieldBays> old, Map<Placed, Found> matched) {
    KeptNames kept = new KeptNames(old, matched);
    kept.fields(survey);
    survey.bays().forEach(kept::within);
    kept.names.entrySet().removeIf(e -> e.getKey().endsWith("/" + e.getValue()));
    kept.names.entrySet().removeIf(e -> e.getKey().equals(e.getValue()));
    return new Naming(kept.names);
  }

  private void fields(Survey survey) {
    Set<String> used = old.stream().map(f -> f.field().id()).collect(Collectors.toSet());
    Set<String> given = new HashSet<>();
    for (FieldBays field : survey.bays()) {
      FramingMatch.fieldOf(field, matched)
          .map(o -> o.field().id())
          .filter(given::add)
          .ifPresent(id -> names.put(field.field().id(), id));
    }
    Set<String> usedDecks = used.stream().map(KeptNames::deckOf).collect(Collectors.toSet());
    Set<String> givenDecks = new HashSet<>();
    for (Deck deck : survey.framing().decks()) {
      String name = deckName(deck, usedDecks, givenDecks);
      names.put(deck.id(), name);
      for (Field field : deck.fields()) {
        used.add(names.computeIfAbsent(field.id(), id -> fresh(name + "/field-", used)));
      }
    }
  }

  private String deckName(Deck deck, Set<String> used, Set<String> given) {
    String name =
        deck.fields().stream()
            .flatMap(f -> Optional.ofNullable(names.get(f.id())).stream())
            .map(KeptNames::deckOf)
            .filter(d -> !given.contains(d))
            .findFirst()
            .orElseGet(() -> fresh("deck-", used));
    given.add(name);
    used.add(name);
    return name;
  }

  private static String deckOf(String field) {
    return field.substring(0, Math.max(0, field.indexOf('/')));
  }

  private static String fresh(String prefix, Set<String> used) {
    int n = 1;
    while (used.contains(prefix + n)) {
      n++;
    }
    return prefix + n;
  }

  private void within(FieldBays field) {
    String counted = field.field().id() + "/";
    String name = names.getOrDefault(field.field().id(), field.field().id());
    Optional<FieldBays> before = old.stream().filter(f -> f.field().id().equals(name)).findFirst();
    Set<String> used = new HashSet<>();
    before.ifPresent(b -> b.bays().forEach(bay -> used.add(bay.id())));
    before.ifPresent(b -> b.field().lines().forEach(line -> used.add(line.id())));
    for (Bay bay : field.bays()) {
      String id =
          Optional.ofNullable(matched.get(new Placed(field, bay)))
              .filter(f -> f.old().field().field().id().equals(name))
              .map(f -> f.old().bay().id())
              .orElseGet(() -> fresh("B", used));
      used.add(id);
      names.put(counted + bay.id(), id);
    }
    Set<String> taken = new HashSet<>();
    for (JoistLine line : field.field().lines()) {
      String id = keptLine(line, before).filter(taken::add).orElseGet(() -> fresh("J", used));
      used.add(id);
      names.put(counted + line.id(), id);
    }
  }

  private Optional<String> keptLine(JoistLine line, Optional<FieldBays> before) {
    return Optional.ofNullable(oldLines.get(line))
        .filter(o -> before.filter(b -> b.field().lines().contains(o)).isPresent())
        .map(JoistLine::id);
  }
}
