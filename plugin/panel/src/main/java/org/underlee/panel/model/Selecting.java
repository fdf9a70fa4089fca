package org.underlee.panel.model;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.underlee.bay.BothWays;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.framing.Field;
import org.underlee.framing.HighLine;
import org.underlee.panel.host.Host;
import org.underlee.run.HighLineAsked;

/** The one selection of the panel: in its pictures, lists and tables, and in the host. */
public final class Selecting {
  private final Host host;
  private final Session session;
  private final Picture3d picture;
  private final Drawings drawings;
  private final RolesGiven roles;
  private final ReadOnlyObjectWrapper<Set<Item>> selection = new ReadOnlyObjectWrapper<>(Set.of());

  Selecting(Host host, Session session, Picture3d picture, Drawings drawings, RolesGiven roles) {
    this.host = host;
    this.session = session;
    this.picture = picture;
    this.drawings = drawings;
    this.roles = roles;
  }

  ReadOnlyObjectProperty<Set<Item>> selection() {
    return selection.getReadOnlyProperty();
  }

  void select(Set<Item> items) {
    if (!items.equals(selection.get())) {
      show(items);
      host.select(elements(items));
    }
  }

  /** Selects what is selected in the host. */
  void selectElements(Set<String> globalIds) {
    Set<Item> items = new LinkedHashSet<>();
    globalIds.forEach(g -> items.add(new Item.OfElement(g)));
    show(items);
  }

  private void show(Set<Item> items) {
    selection.set(Set.copyOf(items));
    picture.select(items);
    drawings.select(items);
  }

  private static Set<String> elements(Set<Item> items) {
    Set<String> ids = new LinkedHashSet<>();
    items.forEach(
        i -> {
          if (i instanceof Item.OfElement e) {
            ids.add(e.globalId());
          }
        });
    return ids;
  }

  /** Selects what a finding is about. */
  public void goTo(Finding finding) {
    session
        .result()
        .get()
        .ifPresent(r -> select(new LinkedHashSet<>(FindingList.places(finding, r))));
  }

  /** The field that a person is at. */
  Optional<String> field() {
    return session
        .result()
        .get()
        .flatMap(r -> AtHand.field(r, selection.get(), picture.orbit().map(Orbit::target)));
  }

  /** Leaves the selected bay open on purpose, or no longer. */
  public void turnBay() {
    bay().ifPresent(b -> session.decide("Leave " + b.bay() + " open or not", d -> d.turning(b)));
  }

  public boolean hasBay() {
    return bay().isPresent();
  }

  /** Lets the field at hand fall both ways from a high line inside it, or again one way. */
  public void turnWays() {
    turning()
        .ifPresent(
            l ->
                session.decide(l.field() + " both ways or one way", d -> d.turningWays(l.field())));
  }

  /** Lets the field at hand fall both ways from this line; from the program's when it is empty. */
  public void turnWaysAt(OptionalDouble station) {
    turning()
        .ifPresent(
            l ->
                session.decide(
                    "Put the high line of " + l.field(),
                    d -> d.turnedAt(new HighLineAsked(l.field(), station))));
  }

  /** The field at hand by the name that it has falling one way, with the line asked for so far. */
  public Optional<HighLineAsked> turning() {
    Decisions now = session.decisions().get();
    return fieldThatMayTurn()
        .map(f -> f.highLine().filter(h -> !h.first()).map(HighLine::other).orElse(f.id()))
        .map(id -> now.highLine(id).orElseGet(() -> new HighLineAsked(id, OptionalDouble.empty())));
  }

  public boolean mayTurnWays() {
    return fieldThatMayTurn().isPresent();
  }

  private Optional<Field> fieldThatMayTurn() {
    return session
        .result()
        .get()
        .flatMap(r -> field().flatMap(id -> r.field(id).filter(f -> mayTurn(f.field(), r))))
        .map(FieldBays::field);
  }

  private static boolean mayTurn(Field field, Result result) {
    return field.highLine().isPresent()
        || result.survey().framing().decks().stream()
            .filter(d -> d.fields().contains(field))
            .anyMatch(d -> BothWays.standsFree(field, d.fields()));
  }

  private Optional<Item.OfBay> bay() {
    return selection.get().stream()
        .filter(Item.OfBay.class::isInstance)
        .map(Item.OfBay.class::cast)
        .findFirst();
  }

  /** The one element of the deck's own model that is selected. */
  public Optional<Item.OfElement> element() {
    return selection.get().stream()
        .filter(Item.OfElement.class::isInstance)
        .map(Item.OfElement.class::cast)
        .filter(e -> selection.get().size() == 1 && roles.canBeSaid(e.globalId()))
        .findFirst();
  }
}
