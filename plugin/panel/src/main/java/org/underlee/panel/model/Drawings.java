package org.underlee.panel.model;

import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.underlee.geom.Vec2;
import org.underlee.picture.PlanPlaces;
import org.underlee.picture.PlanThings;
import org.underlee.units.Lengths.UnitSystem;

/** The plan of the decks and the long section through the selected bay, kept up to date. */
public final class Drawings implements AutoCloseable {
  private final FlatPicture plan;
  private final FlatPicture section;
  private final Newest planning;
  private final Newest sectioning;
  private final ReadOnlyStringWrapper sectionName = new ReadOnlyStringWrapper("");
  private Optional<Result> result = Optional.empty();
  private Optional<Item.OfBay> bay = Optional.empty();
  private UnitSystem units = UnitSystem.METRIC;
  private Set<Item> selected = Set.of();
  private Optional<PlanThings> planned = Optional.empty();
  private Optional<PlanThings> sectioned = Optional.empty();
  private Bringing bringPlan = Bringing.NOT;
  private Bringing bringSection = Bringing.NOT;
  private final WhenWanted planMaking = new WhenWanted(this::makePlan);
  private final WhenWanted sectionMaking = new WhenWanted(this::makeSection);

  public Drawings(Executor screen) {
    plan = new FlatPicture(screen);
    section = new FlatPicture(screen);
    planning = new Newest("making a plan", screen);
    sectioning = new Newest("making a section", screen);
  }

  public FlatPicture plan() {
    return plan;
  }

  public FlatPicture section() {
    return section;
  }

  /**
   * Writes larger or smaller.
   *
   * @param share of the usual size of letters
   */
  void letters(double share) {
    plan.letters(share);
    section.letters(share);
  }

  /** Which bay the section is through. */
  public ReadOnlyStringProperty sectionName() {
    return sectionName.getReadOnlyProperty();
  }

  /** Whether someone looks at the plan: what changes unseen is drawn when it is wanted again. */
  public void wantPlan(boolean wanted) {
    planMaking.want(wanted);
  }

  /** As {@link #wantPlan}. */
  public void wantSection(boolean wanted) {
    sectionMaking.want(wanted);
  }

  /** As {@link Picture3d#clear}. */
  void clear() {
    planning.cancel();
    sectioning.cancel();
    result = Optional.empty();
    bay = Optional.empty();
    sectionName.set("");
    plan.show(Optional.empty(), true);
    section.show(Optional.empty(), true);
  }

  void show(Result next, UnitSystem shownIn, Set<Item> selection) {
    boolean otherModel = result.map(r -> !r.isOfSameModelAs(next)).orElse(true);
    boolean same = result.filter(next::showsSameAs).isPresent() && units == shownIn;
    result = Optional.of(next);
    units = shownIn;
    selected = selection;
    // the leaks come with the whole design
    if (!same || next.isWhole()) {
      planMaking.ask(otherModel);
    }
    Optional<Item.OfBay> before = bay;
    bay =
        bayOf(selection, next).or(() -> otherModel ? firstBay(next) : bay).or(() -> firstBay(next));
    if (!same || !bay.equals(before)) {
      askSection(!bay.equals(before) || otherModel);
    }
  }

  void select(Set<Item> selection, Bringing plans, Bringing sections) {
    selected = selection;
    bringPlan = plans;
    bringSection = sections;
    result.ifPresent(
        r -> {
          planMaking.ask(false);
          Optional<Item.OfBay> next = bayOf(selection, r);
          boolean other = next.isPresent() && !next.equals(bay);
          bay = next.or(() -> bay);
          askSection(other);
        });
  }

  /** What is at a place of the plan. */
  Optional<Item> inPlan(Vec2 place) {
    return result.flatMap(
        r ->
            planned
                .flatMap(p -> p.at(place))
                .map(id -> DrawingMaker.inPlan(r, id))
                .or(() -> bayAt(r, place)));
  }

  private static Optional<Item> bayAt(Result r, Vec2 place) {
    return PlanPlaces.bayAt(r.survey().bays(), place).map(b -> new Item.OfBay(b.field(), b.bay()));
  }

  /** What is at a place of the section. */
  Optional<Item> inSection(Vec2 place) {
    return result.flatMap(
        r -> sectioned.flatMap(s -> s.at(place)).map(id -> DrawingMaker.item(r, id)));
  }

  private void askSection(boolean fit) {
    sectionName.set(
        result.flatMap(r -> bay.map(b -> Names.of(r).bay(b.field(), b.bay()))).orElse(""));
    sectionMaking.ask(fit);
  }

  private void makePlan(boolean fit) {
    Set<Item> selection = selected;
    result.ifPresent(
        r ->
            planning.follow(
                () -> DrawingMaker.plan(r, units, selection),
                p -> showPlan(r, p, fit),
                e -> showPlan(r, Optional.empty(), true)));
  }

  private void showPlan(Result r, Optional<PlanThings> made, boolean fit) {
    planned = made;
    plan.show(made.map(PlanThings::drawing), fit);
    made.ifPresent(p -> plan.bring(DrawingMaker.reach(r, p, selected), bringPlan));
    bringPlan = Bringing.NOT;
  }

  private void makeSection(boolean fit) {
    Optional<Item.OfBay> through = bay;
    Set<Item> selection = selected;
    result.ifPresent(
        r ->
            sectioning.follow(
                () -> through.flatMap(b -> DrawingMaker.section(r, b, units, selection)),
                s -> showSection(s, fit),
                e -> showSection(Optional.empty(), true)));
  }

  private void showSection(Optional<PlanThings> made, boolean fit) {
    sectioned = made;
    section.show(made.map(PlanThings::drawing), fit);
    made.ifPresent(s -> section.bring(s.reach(DrawingMaker.things(selected)), bringSection));
    bringSection = Bringing.NOT;
  }

  private static Optional<Item.OfBay> bayOf(Set<Item> selection, Result r) {
    for (Item item : selection) {
      if (item instanceof Item.OfBay b && r.bay(b.field(), b.bay()).isPresent()) {
        return Optional.of(b);
      }
      if (item instanceof Item.OfPart p) {
        Optional<Item.OfBay> own =
            r.part(p.id()).flatMap(x -> x.bay().map(b -> new Item.OfBay(x.field(), b)));
        if (own.isPresent()) {
          return own;
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<Item.OfBay> firstBay(Result r) {
    return r.survey().bays().stream()
        .filter(f -> r.layoutOf(f.field().id()).isPresent())
        .findFirst()
        .or(() -> r.survey().bays().stream().findFirst())
        .flatMap(
            f -> f.bays().stream().findFirst().map(b -> new Item.OfBay(f.field().id(), b.id())));
  }

  @Override
  public void close() {
    plan.close();
    section.close();
    planning.close();
    sectioning.close();
  }
}
