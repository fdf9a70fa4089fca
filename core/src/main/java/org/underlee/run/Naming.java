package org.underlee.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.framing.JoistLine;
import org.underlee.framing.RoleGiven;

/**
 * Names that decks, fields, bays and lines have in place of those that a survey counts out.
 *
 * @param names by what is counted: {@code deck-1/field-1} → {@code deck-1/field-2}, {@code
 *     deck-1/field-1/B3} → {@code B7}; what is not in it keeps its counted name
 */
record Naming(Map<String, String> names) {
  private static final String BETWEEN = ";";
  private static final String IS = "=";

  Naming {
    names = Map.copyOf(names);
  }

  /** As {@link #text()} writes it. */
  static Naming parse(String text) {
    Map<String, String> names = new HashMap<>();
    for (String each : text.split(BETWEEN, -1)) {
      String[] two = each.split(IS, -1);
      if (two.length == 2) {
        names.put(two[0], two[1]);
      }
    }
    return new Naming(names);
  }

  /** In one line, the same for the same names. */
  String text() {
    return new TreeMap<>(names)
        .entrySet().stream()
            .map(e -> e.getKey() + IS + e.getValue())
            .collect(Collectors.joining(BETWEEN));
  }

  /** The same survey with these names. */
  Survey of(Survey survey) {
    if (names.isEmpty()) {
      return survey;
    }
    Map<String, Field> fields = new HashMap<>();
    List<FieldBays> bays = new ArrayList<>();
    for (FieldBays given : survey.bays()) {
      FieldBays renamed = field(given);
      bays.add(renamed);
      fields.put(given.field().id(), renamed.field());
    }
    return new Survey(
        survey.source(),
        survey.services(),
        survey.model(),
        survey.request(),
        framing(survey.framing(), fields),
        bays,
        survey.elements(),
        survey.findings().stream().map(this::finding).toList());
  }

  String of(String counted) {
    return names.getOrDefault(counted, counted);
  }

  private String within(FieldBays field, String id) {
    return names.getOrDefault(field.field().id() + "/" + id, id);
  }

  private FieldBays field(FieldBays given) {
    Field f = given.field();
    Map<JoistLine, JoistLine> lines = new HashMap<>();
    for (JoistLine l : f.lines()) {
      lines.put(
          l,
          new JoistLine(
              within(given, l.id()),
              l.pieces(),
              l.left(),
              l.right(),
              l.stretch(),
              l.bottom(),
              l.depth(),
              l.why()));
    }
    Field field =
        new Field(
            of(f.id()),
            f.frame(),
            f.lines().stream().map(lines::get).toList(),
            f.high(),
            f.low(),
            f.dropBeams(),
            f.carriers(),
            f.posts(),
            f.blocking(),
            f.storey(),
            f.fallWhy(),
            f.fallAssumed(),
            f.highLine().map(h -> h.beside(of(h.other()))));
    return new FieldBays(field, given.bays().stream().map(b -> bay(given, b, lines)).toList());
  }

  private Bay bay(FieldBays field, Bay b, Map<JoistLine, JoistLine> lines) {
    return new Bay(
        within(field, b.id()),
        lines.getOrDefault(b.left(), b.left()),
        lines.getOrDefault(b.right(), b.right()),
        b.stretch(),
        b.high(),
        b.low(),
        b.blocking(),
        b.bridging(),
        b.crossings());
  }

  private Framing framing(Framing given, Map<String, Field> fields) {
    List<Deck> decks = new ArrayList<>();
    for (Deck d : given.decks()) {
      List<Field> own = d.fields().stream().map(f -> fields.getOrDefault(f.id(), f)).toList();
      decks.add(new Deck(of(d.id()), d.storey(), d.top(), d.outside(), own));
    }
    List<RoleGiven> roles = given.roles().stream().map(this::role).toList();
    List<Finding> findings = given.findings().stream().map(this::finding).toList();
    return new Framing(decks, roles, given.notMeasured(), findings);
  }

  private RoleGiven role(RoleGiven r) {
    Set<String> decks = r.decks().stream().map(this::of).collect(Collectors.toSet());
    return new RoleGiven(r.member(), r.role(), decks, r.confidence(), r.why());
  }

  /** What a finding is about has its name too. */
  private Finding finding(Finding f) {
    List<Finding.Subject> subjects =
        f.subjects().stream()
            .map(
                s ->
                    new Finding.Subject(
                        of(s.group()),
                        names.getOrDefault(s.group() + "/" + s.name(), s.name()),
                        s.place(),
                        s.measured()))
            .toList();
    return new Finding(f.rule(), subjects, f.words(), f.place(), f.measure(), f.fix());
  }
}
