package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.underlee.geom.Vec2;
import org.underlee.panel.model.Gutters.Outlet;
import org.underlee.panel.model.Gutters.Spot;

/**
 * Sets, moves and takes away outlets with their downspouts: by a hand in the plan, or by keys. Once
 * one of a gutter is touched, all of its outlets are the user's.
 */
public final class OutletHand {
  private static final String MOVE = "Move an outlet";
  private static final double KEY_STEP = 0.05;

  /** A place is beside a post where it is no further from it. */
  private static final double GRAIN = 0.01;

  /** A hand that points this near to a gutter, metres, means it. */
  private static final double NEAR_GUTTER = 0.5;

  private final Session session;
  private final Supplier<Set<Item>> selection;
  private final Gutters gutters;
  private Optional<Outlet> held = Optional.empty();
  private Optional<Pointed> pointed = Optional.empty();

  /** A place of the plan that was pointed at, and what that selected. */
  private record Pointed(Vec2 place, Set<Item> selection) {}

  OutletHand(Session session, Supplier<Set<Item>> selection) {
    this.session = session;
    this.selection = selection;
    gutters = new Gutters(session, selection);
  }

  /**
   * Takes hold of the outlet at a place of the plan.
   *
   * @param reach how far beside it still counts, metres
   * @return the outlet; empty when there is none
   */
  public Optional<Item> grasp(Vec2 place, double reach) {
    held = gutters.outletAt(place, reach);
    return held.flatMap(gutters::part);
  }

  /** The outlet at a place of the plan, as {@link #grasp} finds it, and nothing is held. */
  public Optional<Item> outletAt(Vec2 place, double reach) {
    return gutters.outletAt(place, reach).flatMap(gutters::part);
  }

  /** The held outlet follows the hand along its gutter, and stops beside posts. */
  public void drag(Vec2 place) {
    held.ifPresent(
        o -> {
          double at = o.gutter().near(o.gutter().places().along(gutters.world(place)));
          session.drag(MOVE, d -> d.withOutlets(o.gutter().field(), movedTo(o, at)));
        });
  }

  private static List<Double> movedTo(Outlet outlet, double metres) {
    List<Double> all = new ArrayList<>(outlet.gutter().places().outlets());
    all.set(outlet.index(), outlet.gutter().within(metres));
    return all;
  }

  /** The hand lets go: all of the drag is one step to undo. */
  public void drop() {
    if (held.isPresent() && session.isDragging()) {
      session.decide(MOVE, d -> d);
    }
    held = Optional.empty();
  }

  /** Whether one is selected, by itself or by its downspout. */
  public boolean canMove() {
    return gutters.selectedOutlet().isPresent();
  }

  /** Moves the selected one by a step of the keyboard, away from the gutter's start or back. */
  public void step(boolean away) {
    gutters.selectedOutlet().ifPresent(o -> move(o, o.metres() + (away ? KEY_STEP : -KEY_STEP)));
  }

  /** Moves the selected one to the next place beside a post; from the last to the first. */
  public void toNextPost() {
    gutters
        .selectedOutlet()
        .ifPresent(
            o -> {
              double now = o.metres() + GRAIN;
              List<Double> posts = o.gutter().places().posts();
              posts.stream()
                  .filter(p -> p > now)
                  .findFirst()
                  .or(() -> posts.stream().findFirst())
                  .ifPresent(p -> move(o, p));
            });
  }

  private void move(Outlet o, double metres) {
    session.decide(MOVE, d -> d.withOutlets(o.gutter().field(), movedTo(o, metres)));
  }

  /** Lets the program choose again for the field of the selected one. */
  public void giveBack() {
    gutters
        .selectedOutlet()
        .ifPresent(
            o ->
                session.decide(
                    "Let the program place outlets",
                    d -> d.withOutlets(o.gutter().field(), List.of())));
  }

  /** A hand points at a place of the plan, which selects what is selected now. */
  public void point(Vec2 place) {
    pointed = Optional.of(new Pointed(place, selection.get()));
  }

  /** Whether there is a gutter at the place pointed at last, or at what is selected. */
  public boolean canAdd() {
    return here().isPresent();
  }

  /** Sets one more outlet where {@link #canAdd} looks, as one step to undo. */
  public void add() {
    here()
        .ifPresent(
            s -> {
              List<Double> all = new ArrayList<>(s.gutter().places().outlets());
              all.add(s.metres());
              session.decide("Add an outlet", d -> d.withOutlets(s.gutter().field(), all));
            });
  }

  private Optional<Spot> here() {
    return pointed
        .filter(p -> p.selection.equals(selection.get()))
        .flatMap(p -> gutters.at(p.place, NEAR_GUTTER))
        .or(gutters::ofSelection);
  }

  /** Whether one is selected, and it is not the only one of its gutter. */
  public boolean canRemove() {
    return toRemove().isPresent();
  }

  private Optional<Outlet> toRemove() {
    return gutters.selectedOutlet().filter(o -> o.gutter().places().outlets().size() > 1);
  }

  /** Takes the selected one and its downspout away, as one step to undo. */
  public void remove() {
    toRemove()
        .ifPresent(
            o -> {
              List<Double> left = new ArrayList<>(o.gutter().places().outlets());
              left.remove(o.index());
              session.decide("Remove an outlet", d -> d.withOutlets(o.gutter().field(), left));
            });
  }
}
