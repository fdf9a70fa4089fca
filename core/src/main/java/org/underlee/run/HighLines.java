package org.underlee.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.underlee.bay.BothWays;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Subject;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.framing.Told;
import org.underlee.units.Words;

/** Parts the fields that are to fall both ways, so that whatever follows sees two fields each. */
final class HighLines {
  private final Survey whole;
  private final List<FieldBays> bays = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();
  private final Set<String> joists = new TreeSet<>();

  private HighLines(Survey whole) {
    this.whole = whole;
  }

  /**
   * The survey with the fields parted that its request names, or tells by a joist.
   *
   * @throws InputException when there is no field of a name
   */
  static Survey asAsked(Survey survey) {
    Set<String> names = survey.request().bothWays();
    Told told = survey.request().told();
    requireFields(survey, names);
    return names.isEmpty() && told.bothWays().isEmpty()
        ? survey
        : new HighLines(survey).parted(f -> names.contains(f.id()) || told.fallsBothWays(f));
  }

  /** The survey with every field parted that stands free; the same where none does. */
  static Survey whereFree(Survey survey) {
    HighLines lines = new HighLines(survey);
    Map<Field, List<Field>> others = new HashMap<>();
    survey.framing().decks().forEach(d -> d.fields().forEach(f -> others.put(f, d.fields())));
    Survey parted = lines.parted(f -> BothWays.standsFree(f, others.getOrDefault(f, List.of())));
    return lines.joists.isEmpty() ? survey : parted;
  }

  private static void requireFields(Survey survey, Set<String> names) {
    Set<String> unknown = new TreeSet<>(names);
    survey.framing().fields().forEach(f -> unknown.remove(f.id()));
    if (!unknown.isEmpty()) {
      throw new InputException(
          Place.NOWHERE,
          "there is no field " + String.join(", ", unknown) + " to fall both ways",
          "Run survey to see the fields; name one as deck-1/field-1.");
    }
  }

  private Survey parted(Predicate<Field> asked) {
    List<Deck> decks = whole.framing().decks().stream().map(d -> deck(d, asked)).toList();
    Framing framing = whole.framing().with(decks);
    List<Finding> told = new ArrayList<>(whole.findings());
    told.removeAll(whole.framing().findings());
    told.addAll(framing.findings());
    told.addAll(findings);
    Set<String> ways = new HashSet<>(whole.request().told().bothWays());
    ways.addAll(joists);
    Overrides overrides =
        whole.request().overrides().orElseGet(() -> Overrides.nothing("what you asked for"));
    return new Survey(
        whole.source(),
        whole.services(),
        whole.model(),
        ways.isEmpty() ? whole.request() : whole.request().told(overrides.fallingBothWays(ways)),
        framing,
        bays,
        whole.elements(),
        told);
  }

  private Deck deck(Deck deck, Predicate<Field> asked) {
    List<FieldBays> own = new ArrayList<>();
    List<FieldBays> second = new ArrayList<>();
    for (Field field : deck.fields()) {
      FieldBays given = whole.baysOf(field);
      String other = deck.id() + "/field-" + (deck.fields().size() + second.size() + 1);
      Optional<List<FieldBays>> halves =
          asked.test(field) ? halves(given, deck, other) : Optional.empty();
      own.add(halves.map(h -> h.get(0)).orElse(given));
      halves.ifPresent(h -> second.add(h.get(1)));
      halves.ifPresent(h -> joists.add(field.lines().get(0).plies().get(0).id()));
    }
    own.addAll(second);
    bays.addAll(own);
    List<Field> fields = own.stream().map(FieldBays::field).toList();
    return new Deck(deck.id(), deck.storey(), deck.top(), deck.outside(), fields);
  }

  private Optional<List<FieldBays>> halves(FieldBays given, Deck deck, String other) {
    Field field = given.field();
    if (!BothWays.standsFree(field, deck.fields())) {
      findings.add(
          about(
              Finding.of(
                  Rules.BOTH_WAYS_AT_HOUSE,
                  Place.NOWHERE,
                  Words.of(
                      "asked to fall both ways, but its high end is at the house; it falls one way."),
                  "Let it fall away from the house; a gentler fall or a low end nearer to the"
                      + " house takes less height."),
              field));
      return Optional.empty();
    }
    Optional<List<FieldBays>> halves = BothWays.of(given, other);
    if (halves.isEmpty()) {
      findings.add(
          about(
              Finding.of(
                  Rules.NO_HIGH_LINE,
                  Place.NOWHERE,
                  Words.of(
                      "asked to fall both ways, but something stands in its bays wherever the high"
                          + " line could be; it falls one way."),
                  "Have blocking set in one row, or pipes moved, near the middle of the joists."),
              field));
    }
    return halves;
  }

  private static Finding about(Finding finding, Field field) {
    Place place = field.lines().get(0).plies().get(0).element().place();
    return finding.about(new Subject(field.id(), "", place, Optional.empty()));
  }
}
