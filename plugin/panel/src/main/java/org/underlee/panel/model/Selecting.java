package org.underlee.panel.model;

import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
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
import org.underlee.geom.Vec2;
import org.underlee.panel.host.Host;
import org.underlee.run.Design;
import org.underlee.run.HighLineAsked;

/** The one selection of the panel: in its pictures, lists and tables, and in the host. */
public final class Selecting {
  private final Host host;
  private final Session session;
  private final Picture3d picture;
  private final Drawings drawings;
  private final RolesGiven roles;
  private final ReadOnlyObjectWrapper<Set<Item>> selection = new ReadOnlyObjectWrapper<>(Set.of());
  private final ReadOnlyObjectWrapper<Optional<Finding>> finding =
      new ReadOnlyObjectWrapper<>(Optional.empty());

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

  /** The finding in hand, while what it is about is selected. */
  public ReadOnlyObjectProperty<Optional<Finding>> finding() {
    return finding.getReadOnlyProperty();
  }

  /** Selects what a hand points at in a picture, which stays as it is; so do the others. */
  void select(Set<Item> items) {
    choose(items, Bringing.NOT, Bringing.NOT, Bringing.NOT);
  }

  /** Selects what is at a pixel of the 3-D picture. */
  public void pickIn3d(int x, int y) {
    Set<Item> at = picture.pick(x, y).map(Set::of).orElseGet(Set::of);
    choose(at, Bringing.NOT, Bringing.INTO_VIEW, Bringing.INTO_VIEW);
  }

  /** Selects what is at a place of the plan. */
  public void pickInPlan(Vec2 place) {
    Set<Item> at = drawings.inPlan(place).map(Set::of).orElseGet(Set::of);
    choose(at, Bringing.INTO_VIEW, Bringing.NOT, Bringing.INTO_VIEW);
  }

  /** Selects what is at a place of the section; beside all things the bay stays selected. */
  public void pickInSection(Vec2 place) {
    drawings
        .inSection(place)
        .ifPresent(i -> choose(Set.of(i), Bringing.INTO_VIEW, Bringing.INTO_VIEW, Bringing.NOT));
  }

  /** Selects something and brings it into view where it is not. */
  public void goTo(Set<Item> items) {
    choose(items, Bringing.INTO_VIEW, Bringing.INTO_VIEW, Bringing.INTO_VIEW);
  }

  /** Selects what a finding is about, and takes the finding in hand. */
  public void goTo(Finding about) {
    Optional<Result> now = session.result().get();
    Set<Item> places =
        new LinkedHashSet<>(now.map(r -> Noticed.places(about, r)).orElse(List.of()));
    choose(places, Optional.of(about), Bringing.INTO_VIEW, Bringing.INTO_VIEW, Bringing.INTO_VIEW);
  }

  /** Fills each picture with what is selected. */
  public void look() {
    picture.select(selection.get(), Bringing.NEAR);
    drawings.select(selection.get(), Bringing.NEAR, Bringing.NEAR);
  }

  private void choose(Set<Item> items, Bringing in3d, Bringing inPlan, Bringing inSection) {
    choose(items, Optional.empty(), in3d, inPlan, inSection);
  }

  private void choose(
      Set<Item> items,
      Optional<Finding> about,
      Bringing in3d,
      Bringing inPlan,
      Bringing inSection) {
    boolean other = !items.equals(selection.get());
    finding.set(about);
    show(items, in3d, inPlan, inSection);
    if (other) {
      host.select(session.result().get().map(r -> elements(items, r)).orElse(Set.of()));
    }
  }

  /** Selects what is selected in the host: elements, or parts that it has written. */
  void selectElements(Set<String> globalIds) {
    Map<String, String> parts = new HashMap<>();
    session
        .result()
        .get()
        .flatMap(Result::design)
        .ifPresent(d -> d.globalIds().forEach((part, id) -> parts.put(id, part)));
    Set<Item> items = new LinkedHashSet<>();
    globalIds.forEach(
        g ->
            items.add(
                parts.containsKey(g) ? new Item.OfPart(parts.get(g)) : new Item.OfElement(g)));
    finding.set(Optional.empty());
    show(items, Bringing.INTO_VIEW, Bringing.INTO_VIEW, Bringing.INTO_VIEW);
  }

  private void show(Set<Item> items, Bringing in3d, Bringing inPlan, Bringing inSection) {
    // in their order: the first is the one that is told about
    selection.set(Collections.unmodifiableSet(new LinkedHashSet<>(items)));
    picture.select(items, in3d);
    drawings.select(items, inPlan, inSection);
  }

  /** What the host knows of it: elements, and parts by the GlobalIds that they are written with. */
  private static Set<String> elements(Set<Item> items, Result result) {
    Map<String, String> written = result.design().map(Design::globalIds).orElse(Map.of());
    Set<String> ours = new HashSet<>();
    result.layout().parts().forEach(p -> ours.add(p.id()));
    Set<String> ids = new LinkedHashSet<>();
    for (Item item : items) {
      for (String name : Highlight.names(item, result)) {
        Optional.ofNullable(written.get(name))
            .or(() -> Optional.of(name).filter(n -> !ours.contains(n)))
            .ifPresent(ids::add);
      }
    }
    return ids;
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
            l -> session.decide(name(l) + " both ways or one way", d -> d.turningWays(l.field())));
  }

  /** Lets the field at hand fall both ways from this line; from the program's when it is empty. */
  public void turnWaysAt(OptionalDouble station) {
    turning()
        .ifPresent(
            l ->
                session.decide(
                    "Put the high line of " + name(l),
                    d -> d.turnedAt(new HighLineAsked(l.field(), station))));
  }

  private String name(HighLineAsked line) {
    return Names.of(session.result().get()).field(line.field());
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
