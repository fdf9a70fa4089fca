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
import org.underlee.units.Quantity;

/**
 * Makes trees of decks.
 *
 * @param caught what the proof shows, once it is there
 */
record OutlineMaker(Result result, Names names, UnitSystem units, Optional<Caught> caught) {

  Outline deck(Deck deck) {
    List<Outline> fields = deck.fields().stream().map(f -> field(f)).toList();
    boolean inScope = Names.isInScope(deck, result.decisions());
    String note =
        (deck.outside().value() ? "outside" : "inside")
            + deck.storey().map(s -> ", " + s.name()).orElse("");
    return new Outline(
        new Item.OfDeck(deck.id()),
        Names.deck(deck.id()),
        note,
        inScope ? together(fields) : Outline.State.OUT,
        fields);
  }

  private Outline field(Field field) {
    Optional<FieldLayout> layout = result.layoutOf(field.id());
    FieldBays bays = result.survey().baysOf(field);
    List<Outline> inside = bays.bays().stream().map(b -> bay(field.id(), b, layout)).toList();
    List<Outline> shared =
        layout.stream()
            .flatMap(l -> l.parts().stream())
            .filter(p -> p.bay().isEmpty() && !p.bodies().isEmpty())
            .map(p -> part(p))
            .toList();
    String note =
        layout
            .map(l -> "falls " + Lengths.fall(l.fall(), units) + open(field))
            .orElse(bays.bays().size() + " bays");
    List<Outline> all = java.util.stream.Stream.concat(inside.stream(), shared.stream()).toList();
    Outline.State state = layout.isEmpty() ? without() : together(inside);
    return new Outline(new Item.OfField(field.id()), names.field(field.id()), note, state, all);
  }

  /** {@code , 2.25 m² not drained}. */
  private String open(Field field) {
    return caught
        .map(c -> c.open(field.id()))
        .filter(area -> area > 0)
        .map(area -> ", " + Quantity.area(area).in(units) + " not drained")
        .orElse("");
  }

  private Outline bay(String field, Bay bay, Optional<FieldLayout> layout) {
    List<Outline> parts =
        layout.stream()
            .flatMap(l -> l.parts().stream())
            .filter(p -> p.bay().filter(bay.id()::equals).isPresent() && !p.bodies().isEmpty())
            .map(p -> part(p))
            .toList();
    boolean isCaught = layout.filter(l -> l.bays().contains(bay.id())).isPresent();
    Optional<Caught.Bay> own = caught.map(c -> c.bay(field, bay.id()));
    Outline.State served =
        own.map(c -> c.isWhole() ? Outline.State.SERVED : Outline.State.PARTLY)
            .orElse(Outline.State.LAID_OUT);
    Outline.State state = layout.isEmpty() ? without() : isCaught ? served : Outline.State.OPEN;
    String open =
        own.filter(c -> state == Outline.State.PARTLY)
            .map(c -> c.rest().in(units) + ", ")
            .orElse("");
    String size =
        Lengths.format(bay.clearWidthHigh(), units) + " × " + Lengths.format(bay.length(), units);
    return new Outline(new Item.OfBay(field, bay.id()), bay.id(), open + size, state, parts);
  }

  private Outline part(Part part) {
    // an end cap is as long as its sheet is thick
    boolean isLong = part.length() > Lengths.TAPE_MARK;
    String length = isLong ? ", " + Lengths.cut(part.length(), units) : "";
    String note = part.kind().spoken() + length;
    return new Outline(
        new Item.OfPart(part.id()), part.label(), note, Outline.State.PLAIN, List.of());
  }

  /** What has no layout is out of scope, or has none yet. */
  private Outline.State without() {
    return result.isLaidOut() ? Outline.State.OUT : Outline.State.PLAIN;
  }

  private Outline.State together(List<Outline> inside) {
    Set<Outline.State> states =
        inside.stream()
            .map(Outline::state)
            .filter(s -> s != Outline.State.PLAIN)
            .collect(Collectors.toSet());
    return states.size() == 1
        ? states.iterator().next()
        : states.isEmpty() ? without() : Outline.State.PARTLY;
  }
}
