package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.GutterPlaces;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.picture.PlanPlaces;

/** Moves outlets and their downspouts along gutters: by a hand in the plan, or by keys. */
public final class OutletHand {
  private static final String MOVE = "Move an outlet";

  /** A hand this near to a place beside a post means that place. */
  private static final double SNAP = 0.12;

  /** A hand places to the centimetre. */
  private static final double GRAIN = 0.01;

  private static final double KEY_STEP = 0.05;

  /** Outlets keep this far from a gutter's ends: further out is refused. */
  private static final double FROM_END = 0.1;

  private static final Set<PartKind> DOWN =
      Set.of(PartKind.OUTLET, PartKind.DOWNSPOUT, PartKind.ELBOW);

  private final Session session;
  private final Supplier<Set<Item>> selection;
  private Optional<Held> held = Optional.empty();

  /**
   * One outlet.
   *
   * @param gutter as it was when the hand took hold
   */
  private record Held(String field, GutterPlaces gutter, int outlet) {
    List<Double> movedTo(double metres) {
      List<Double> all = new ArrayList<>(gutter.outlets());
      all.set(outlet, Math.max(FROM_END, Math.min(gutter.length() - FROM_END, metres)));
      return all;
    }
  }

  OutletHand(Session session, Supplier<Set<Item>> selection) {
    this.session = session;
    this.selection = selection;
  }

  /**
   * Takes hold of the outlet at a place of the plan.
   *
   * @param reach how far beside it still counts, metres
   * @return the outlet; empty when there is none
   */
  public Optional<Item> grasp(Vec2 place, double reach) {
    held = fields().stream().flatMap(f -> at(f, place, reach).stream()).findFirst();
    return held.flatMap(this::part);
  }

  private Optional<Held> at(FieldLayout field, Vec2 place, double reach) {
    return field
        .gutter()
        .map(g -> new Held(field.field(), g, g.nearest(world(place))))
        .filter(h -> level(h.gutter, h.outlet).minus(place).length() <= reach);
  }

  private Transform sheet() {
    return session
        .result()
        .get()
        .flatMap(r -> PlanPlaces.toWorld(r.survey().bays()))
        .orElse(Transform.IDENTITY);
  }

  /** Where an outlet is in the plan. */
  private Vec2 level(GutterPlaces gutter, int outlet) {
    Vec3 at = sheet().toLocal(gutter.at(gutter.outlets().get(outlet)));
    return new Vec2(at.x(), at.y());
  }

  /** The world place below a place of the plan, as far as that is told. */
  private Vec3 world(Vec2 place) {
    return sheet().apply(new Vec3(place.x(), place.y(), 0));
  }

  private Optional<Item> part(Held h) {
    return fields().stream()
        .filter(f -> f.field().equals(h.field))
        .flatMap(f -> f.parts().stream())
        .filter(p -> p.kind() == PartKind.OUTLET)
        .skip(h.outlet)
        .findFirst()
        .map(p -> new Item.OfPart(p.id()));
  }

  private List<FieldLayout> fields() {
    return session.result().get().map(r -> r.layout().fields()).orElse(List.of());
  }

  /** The held outlet follows the hand along its gutter, and stops beside posts. */
  public void drag(Vec2 place) {
    held.ifPresent(
        h -> {
          double at = h.gutter.along(world(place));
          List<Double> moved = h.movedTo(snapped(at, h.gutter));
          session.drag(MOVE, d -> d.withOutlets(h.field, moved));
        });
  }

  private static double snapped(double at, GutterPlaces gutter) {
    return gutter.posts().stream()
        .filter(p -> Math.abs(p - at) <= SNAP)
        .min(Comparator.comparingDouble(p -> Math.abs(p - at)))
        .orElse(Math.rint(at / GRAIN) * GRAIN);
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
    return selected().isPresent();
  }

  private Optional<Held> selected() {
    return session
        .result()
        .get()
        .flatMap(
            r ->
                selection.get().stream()
                    .filter(Item.OfPart.class::isInstance)
                    .flatMap(i -> r.part(((Item.OfPart) i).id()).stream())
                    .filter(p -> DOWN.contains(p.kind()))
                    .findFirst()
                    .flatMap(p -> held(p, r)));
  }

  private static Optional<Held> held(Part part, Result r) {
    return r.layoutOf(part.field())
        .flatMap(FieldLayout::gutter)
        .map(g -> new Held(part.field(), g, g.nearest(part.bounds().centre())));
  }

  /** Moves the selected one by a step of the keyboard, away from the gutter's start or back. */
  public void step(boolean away) {
    selected()
        .ifPresent(h -> move(h, h.gutter.outlets().get(h.outlet) + (away ? KEY_STEP : -KEY_STEP)));
  }

  /** Moves the selected one to the next place beside a post; from the last to the first. */
  public void toNextPost() {
    selected()
        .ifPresent(
            h -> {
              double now = h.gutter.outlets().get(h.outlet) + GRAIN;
              List<Double> posts = h.gutter.posts();
              posts.stream()
                  .filter(p -> p > now)
                  .findFirst()
                  .or(() -> posts.stream().findFirst())
                  .ifPresent(p -> move(h, p));
            });
  }

  private void move(Held h, double metres) {
    session.decide(MOVE, d -> d.withOutlets(h.field, h.movedTo(metres)));
  }

  /** Lets the program choose again for the field of the selected one. */
  public void giveBack() {
    selected()
        .ifPresent(
            h ->
                session.decide(
                    "Let the program place outlets", d -> d.withOutlets(h.field, List.of())));
  }
}
