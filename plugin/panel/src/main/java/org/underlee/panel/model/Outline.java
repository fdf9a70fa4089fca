package org.underlee.panel.model;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/** A deck as a tree: its fields, their bays, the parts of each. */
public record Outline(Item item, String name, String note, State state, List<Outline> inside) {
  /** How it stands with a thing; the word is shown beside its colour. */
  public enum State {
    SERVED("drained"),
    PARTLY("partly drained"),
    OPEN("left open"),
    OUT("not in scope"),
    PLAIN("");

    private final String words;

    State(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public Outline {
    inside = List.copyOf(inside);
  }

  /** One tree for each deck of the model. */
  public static List<Outline> of(Result result, UnitSystem units) {
    return result.survey().framing().decks().stream().map(d -> deck(d, result, units)).toList();
  }

  private static Outline deck(Deck deck, Result result, UnitSystem units) {
    List<Outline> fields = deck.fields().stream().map(f -> field(f, result, units)).toList();
    boolean inScope =
        result.decisions().deck().map(deck.id()::equals).orElse(deck.outside().value());
    String note =
        (deck.outside().value() ? "outside" : "inside")
            + deck.storey().map(s -> ", " + s.name()).orElse("");
    return new Outline(
        new Item.OfDeck(deck.id()),
        named("Deck", deck.id()),
        note,
        inScope ? together(fields, result) : State.OUT,
        fields);
  }

  private static Outline field(Field field, Result result, UnitSystem units) {
    Optional<FieldLayout> layout = result.layoutOf(field.id());
    FieldBays bays = result.survey().baysOf(field);
    List<Outline> inside =
        bays.bays().stream().map(b -> bay(field.id(), b, layout, result, units)).toList();
    List<Outline> shared =
        layout.stream()
            .flatMap(l -> l.parts().stream())
            .filter(p -> p.bay().isEmpty() && !p.bodies().isEmpty())
            .map(p -> part(p, units))
            .toList();
    String note =
        layout
            .map(l -> "falls " + Lengths.fall(l.fall(), units))
            .orElse(bays.bays().size() + " bays");
    List<Outline> all = java.util.stream.Stream.concat(inside.stream(), shared.stream()).toList();
    State state = layout.isEmpty() ? without(result) : together(inside, result);
    return new Outline(new Item.OfField(field.id()), named("Field", field.id()), note, state, all);
  }

  private static Outline bay(
      String field, Bay bay, Optional<FieldLayout> layout, Result result, UnitSystem units) {
    List<Outline> parts =
        layout.stream()
            .flatMap(l -> l.parts().stream())
            .filter(p -> p.bay().filter(bay.id()::equals).isPresent() && !p.bodies().isEmpty())
            .map(p -> part(p, units))
            .toList();
    State state = layout.isEmpty() ? without(result) : parts.isEmpty() ? State.OPEN : State.SERVED;
    String note =
        Lengths.format(bay.clearWidthHigh(), units) + " × " + Lengths.format(bay.length(), units);
    return new Outline(new Item.OfBay(field, bay.id()), bay.id(), note, state, parts);
  }

  private static Outline part(Part part, UnitSystem units) {
    // an end cap is as long as its sheet is thick
    boolean isLong = part.length() > Lengths.TAPE_MARK;
    String length = isLong ? ", " + Lengths.cut(part.length(), units) : "";
    String note = part.kind().spoken() + length;
    return new Outline(new Item.OfPart(part.id()), part.label(), note, State.PLAIN, List.of());
  }

  /** What has no layout is out of scope, or has none yet. */
  private static State without(Result result) {
    return result.isLaidOut() ? State.OUT : State.PLAIN;
  }

  private static State together(List<Outline> inside, Result result) {
    Set<State> states =
        inside.stream()
            .map(Outline::state)
            .filter(s -> s != State.PLAIN)
            .collect(Collectors.toSet());
    return states.size() == 1
        ? states.iterator().next()
        : states.isEmpty() ? without(result) : State.PARTLY;
  }

  /** {@code Deck 1} of {@code deck-1}, {@code Field 2} of {@code deck-1/field-2}. */
  private static String named(String word, String id) {
    return word + " " + id.substring(id.lastIndexOf('-') + 1);
  }
}
