package org.underlee.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.underlee.bay.BothWays;
import org.underlee.bay.FieldBays;
import org.underlee.bay.HighLinePlaces;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Subject;
import org.underlee.finding.Fix;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.framing.Told;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Parts the fields that are to fall both ways, so that whatever follows sees two fields each. */
final class HighLines {
  private final Survey whole;
  private final List<FieldBays> bays = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();
  private final Told told;
  private final Set<String> joists = new TreeSet<>();
  private final Map<String, Double> stations = new TreeMap<>();

  private HighLines(Survey whole) {
    this.whole = whole;
    this.told = whole.request().told();
  }

  /**
   * The survey with the fields parted that its request names, or tells by a joist. A name stands
   * over what is told.
   *
   * @throws InputException when there is no field of a name, or a field is given two lines
   */
  static Survey asAsked(Survey survey) {
    HighLines lines = new HighLines(survey);
    Map<String, HighLineAsked> names = named(survey);
    return names.isEmpty() && lines.told.bothWays().isEmpty() && lines.told.highLines().isEmpty()
        ? survey
        : lines.parted(f -> Optional.ofNullable(names.get(f.id())).or(() -> lines.asTold(f)));
  }

  /** The survey with every field parted that stands free; the same where none does. */
  static Survey whereFree(Survey survey) {
    HighLines lines = new HighLines(survey);
    Map<Field, List<Field>> others = new HashMap<>();
    survey.framing().decks().forEach(d -> d.fields().forEach(f -> others.put(f, d.fields())));
    Survey parted =
        lines.parted(
            f ->
                Optional.of(new HighLineAsked(f.id(), OptionalDouble.empty()))
                    .filter(a -> BothWays.standsFree(f, others.getOrDefault(f, List.of()))));
    return lines.joists.isEmpty() ? survey : parted;
  }

  private static Map<String, HighLineAsked> named(Survey survey) {
    Map<String, HighLineAsked> names = new TreeMap<>();
    for (HighLineAsked asked : survey.request().bothWays()) {
      if (names.put(asked.field(), asked) != null) {
        throw new InputException(
            Place.NOWHERE,
            asked.field() + " was asked twice to fall both ways, from two lines",
            "Name it once; it has one high line.");
      }
    }
    Set<String> unknown = new TreeSet<>(names.keySet());
    survey.framing().fields().forEach(f -> unknown.remove(f.id()));
    if (!unknown.isEmpty()) {
      throw new InputException(
          Place.NOWHERE,
          "there is no field " + String.join(", ", unknown) + " to fall both ways",
          "Run survey to see the fields; name one as deck-1/field-1.");
    }
    return names;
  }

  private Optional<HighLineAsked> asTold(Field field) {
    if (!told.fallsBothWays(field)) {
      return Optional.empty();
    }
    List<Double> places = told.highLines(field);
    if (places.size() > 1) {
      throw new InputException(
          Place.NOWHERE,
          String.format(
              Locale.ROOT,
              "the overrides put the high line of %s at %s: a field has one",
              field.id(),
              places.stream().map(HighLineAsked::length).collect(Collectors.joining(" and "))),
          "Keep one joist of the field under highLines.");
    }
    OptionalDouble at = places.stream().mapToDouble(v -> v).findFirst();
    return Optional.of(new HighLineAsked(field.id(), at));
  }

  private Survey parted(Function<Field, Optional<HighLineAsked>> asked) {
    List<Deck> decks = whole.framing().decks().stream().map(d -> deck(d, asked)).toList();
    Framing framing = whole.framing().with(decks);
    List<Finding> said = new ArrayList<>(whole.findings());
    said.removeAll(whole.framing().findings());
    said.addAll(framing.findings());
    said.addAll(findings);
    return new Survey(
        whole.source(),
        whole.services(),
        whole.model(),
        request(),
        framing,
        bays,
        whole.elements(),
        said);
  }

  /** What was asked by name is told from here on, by the first joist of each field. */
  private SurveyRequest request() {
    Set<String> parted =
        whole
            .framing()
            .fields()
            .filter(f -> joists.contains(first(f)))
            .flatMap(Told::joists)
            .collect(Collectors.toSet());
    Set<String> ways = new TreeSet<>(told.bothWays());
    Map<String, Double> lines = new TreeMap<>(told.highLines());
    ways.removeAll(parted);
    lines.keySet().removeAll(parted);
    lines.putAll(stations);
    joists.stream().filter(j -> !stations.containsKey(j)).forEach(ways::add);
    Overrides overrides =
        whole.request().overrides().orElseGet(() -> Overrides.nothing("what you asked for"));
    return ways.isEmpty() && lines.isEmpty()
        ? whole.request()
        : whole.request().told(overrides.fallingBothWays(ways, lines));
  }

  private static String first(Field field) {
    return field.lines().get(0).plies().get(0).id();
  }

  private Deck deck(Deck deck, Function<Field, Optional<HighLineAsked>> asked) {
    List<FieldBays> own = new ArrayList<>();
    List<FieldBays> second = new ArrayList<>();
    for (Field field : deck.fields()) {
      FieldBays given = whole.baysOf(field);
      String other = deck.id() + "/field-" + (deck.fields().size() + second.size() + 1);
      Optional<HighLineAsked> line = asked.apply(field);
      Optional<List<FieldBays>> halves = line.flatMap(l -> halves(given, deck, l, other));
      own.add(halves.map(h -> h.get(0)).orElse(given));
      halves.ifPresent(h -> second.add(h.get(1)));
      halves.ifPresent(h -> keep(field, line.orElseThrow()));
    }
    own.addAll(second);
    bays.addAll(own);
    List<Field> fields = own.stream().map(FieldBays::field).toList();
    return new Deck(deck.id(), deck.storey(), deck.top(), deck.outside(), fields);
  }

  private void keep(Field field, HighLineAsked line) {
    joists.add(first(field));
    line.station().ifPresent(v -> stations.put(first(field), v));
  }

  private Optional<List<FieldBays>> halves(
      FieldBays given, Deck deck, HighLineAsked line, String other) {
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
    return line.station().isPresent()
        ? halvesAt(given, line.station().getAsDouble(), other)
        : halvesWhereFree(given, other);
  }

  private Optional<List<FieldBays>> halvesAt(FieldBays given, double station, String other) {
    HighLinePlaces places = new HighLinePlaces(given);
    Optional<Words> wrong = places.wrong(station);
    if (wrong.isPresent()) {
      Words words =
          Words.of(
              "asked to fall both ways from a line %s from its high end, but %s; it falls one way.",
              Quantity.length(station), wrong.get());
      Fix fix = elsewhere(given.field().id(), station, places.beside(station));
      findings.add(
          about(Finding.of(Rules.HIGH_LINE_NOT_THERE, Place.NOWHERE, words, fix), given.field()));
      return Optional.empty();
    }
    return BothWays.at(given, station, other);
  }

  private static Fix elsewhere(String field, double station, List<Double> places) {
    List<Double> nearest =
        places.stream().sorted(Comparator.comparing(v -> Math.abs(v - station))).toList();
    if (nearest.isEmpty()) {
      return Fix.of("Have blocking set in one row, or pipes moved, near the middle of the joists.");
    }
    Quantity first = Quantity.length(nearest.get(0));
    HighLineAsked there = new HighLineAsked(field, OptionalDouble.of(nearest.get(0)));
    return Fix.with(
        nearest.size() == 1
            ? Words.of("Put the line %s from the high end.", first)
            : Words.of(
                "Put the line %s or %s from the high end.", first, Quantity.length(nearest.get(1))),
        new Fix.Action(
            List.of(new Fix.Option("--both-ways", there.text())),
            Words.of("it falls both ways from a line %s from its high end", first)));
  }

  private Optional<List<FieldBays>> halvesWhereFree(FieldBays given, String other) {
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
              given.field()));
    }
    return halves;
  }

  private static Finding about(Finding finding, Field field) {
    Place place = field.lines().get(0).plies().get(0).element().place();
    return finding.about(new Subject(field.id(), "", place, Optional.empty()));
  }
}
