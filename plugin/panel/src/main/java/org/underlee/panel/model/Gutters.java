package org.underlee.panel.model;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.GutterPlaces;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.picture.PlanPlaces;

/** The gutters of the newest layout: by places of the plan, and by what is selected. */
final class Gutters {
  /** Outlets keep this far from a gutter's ends: further out is refused. */
  private static final double FROM_END = 0.1;

  /** A hand this near to a place beside a post means that place. */
  private static final double SNAP = 0.12;

  /** A hand places to the centimetre. */
  private static final double GRAIN = 0.01;

  private static final Set<PartKind> DOWN =
      Set.of(PartKind.OUTLET, PartKind.DOWNSPOUT, PartKind.ELBOW);

  private final Session session;
  private final Supplier<Set<Item>> selection;

  Gutters(Session session, Supplier<Set<Item>> selection) {
    this.session = session;
    this.selection = selection;
  }

  /** The gutter of a field. */
  record Gutter(String field, GutterPlaces places) {
    /** The outlet nearest to a world place. */
    Outlet nearest(Vec3 place) {
      return new Outlet(this, places.nearest(place));
    }

    /** As near to there as an outlet may be; beside a post where one is near. */
    double near(double metres) {
      double free =
          places.posts().stream()
              .filter(p -> Math.abs(p - metres) <= SNAP)
              .min(Comparator.comparingDouble(p -> Math.abs(p - metres)))
              .orElse(Math.rint(metres / GRAIN) * GRAIN);
      return within(free);
    }

    /** Beside the post that is furthest from all outlets; without posts, the end that is. */
    double farthest() {
      List<Double> ends = List.of(within(0), within(places.length()));
      return (places.posts().isEmpty() ? ends : places.posts())
          .stream().max(Comparator.comparingDouble(this::toNextOutlet)).orElseThrow();
    }

    private double toNextOutlet(double metres) {
      return places.outlets().stream().mapToDouble(o -> Math.abs(o - metres)).min().orElse(0);
    }

    double within(double metres) {
      return Math.max(FROM_END, Math.min(places.length() - FROM_END, metres));
    }
  }

  /**
   * One outlet.
   *
   * @param gutter as it was when it was found
   * @param index of its outlets, counted from 0
   */
  record Outlet(Gutter gutter, int index) {
    double metres() {
      return gutter.places.outlets().get(index);
    }
  }

  /** A place along a gutter, metres from its start. */
  record Spot(Gutter gutter, double metres) {}

  private List<FieldLayout> fields() {
    return session.result().get().map(r -> r.layout().fields()).orElse(List.of());
  }

  private Optional<Gutter> of(String field) {
    return fields().stream().filter(f -> f.field().equals(field)).findFirst().flatMap(Gutters::of);
  }

  private static Optional<Gutter> of(FieldLayout field) {
    return field.gutter().map(g -> new Gutter(field.field(), g));
  }

  /** The outlet at a place of the plan, so far beside it at most, metres. */
  Optional<Outlet> outletAt(Vec2 place, double reach) {
    return fields().stream()
        .flatMap(f -> of(f).stream())
        .map(g -> g.nearest(world(place)))
        .filter(o -> level(o).minus(place).length() <= reach)
        .findFirst();
  }

  /** The selected outlet: by itself or by its downspout. */
  Optional<Outlet> selectedOutlet() {
    return selectedPart()
        .filter(p -> DOWN.contains(p.kind()))
        .flatMap(p -> of(p.field()).map(g -> g.nearest(p.bounds().centre())));
  }

  private Optional<Part> selectedPart() {
    return session
        .result()
        .get()
        .flatMap(
            r ->
                selection.get().stream()
                    .filter(Item.OfPart.class::isInstance)
                    .flatMap(i -> r.part(((Item.OfPart) i).id()).stream())
                    .findFirst());
  }

  /** The part that an outlet is. */
  Optional<Item> part(Outlet o) {
    return fields().stream()
        .filter(f -> f.field().equals(o.gutter.field))
        .flatMap(f -> f.parts().stream())
        .filter(p -> p.kind() == PartKind.OUTLET)
        .skip(o.index)
        .findFirst()
        .map(p -> new Item.OfPart(p.id()));
  }

  /** Where along its gutter the selected bay or part is; of a field, far from its outlets. */
  Optional<Spot> ofSelection() {
    return selection.get().stream().flatMap(i -> spot(i).stream()).findFirst();
  }

  private Optional<Spot> spot(Item item) {
    if (item instanceof Item.OfBay b) {
      return session
          .result()
          .get()
          .flatMap(r -> r.field(b.field()))
          .flatMap(f -> middle(f, b.bay()))
          .flatMap(at -> spot(b.field(), at));
    }
    if (item instanceof Item.OfField f) {
      return of(f.id()).map(g -> new Spot(g, g.farthest()));
    }
    return item instanceof Item.OfPart
        ? selectedPart().flatMap(p -> spot(p.field(), p.bounds().centre()))
        : Optional.empty();
  }

  private static Optional<Vec3> middle(FieldBays field, String bay) {
    return field.bays().stream().filter(b -> b.id().equals(bay)).findFirst().map(b -> at(field, b));
  }

  private static Vec3 at(FieldBays field, Bay bay) {
    double v = bay.stretch().middle();
    double u = (bay.left().centre(v) + bay.right().centre(v)) / 2;
    return field.field().frame().apply(new Vec3(u, v, 0));
  }

  private Optional<Spot> spot(String field, Vec3 at) {
    return of(field).map(g -> new Spot(g, g.near(g.places.along(at))));
  }

  /** Along the gutter of the bay at a place of the plan, or of one this near to it, metres. */
  Optional<Spot> at(Vec2 place, double reach) {
    Vec3 at = world(place);
    return session
        .result()
        .get()
        .flatMap(r -> PlanPlaces.bayAt(r.survey().bays(), place))
        .flatMap(b -> spot(b.field(), at))
        .or(() -> beside(place, reach));
  }

  private Optional<Spot> beside(Vec2 place, double reach) {
    return fields().stream()
        .flatMap(f -> spot(f.field(), world(place)).stream())
        .filter(s -> level(s.gutter, s.metres).minus(place).length() <= reach)
        .findFirst();
  }

  private Transform sheet() {
    return session
        .result()
        .get()
        .flatMap(r -> PlanPlaces.toWorld(r.survey().bays()))
        .orElse(Transform.IDENTITY);
  }

  private Vec2 level(Outlet o) {
    return level(o.gutter, o.metres());
  }

  /** Where a place of a gutter is in the plan. */
  private Vec2 level(Gutter gutter, double metres) {
    Vec3 at = sheet().toLocal(gutter.places.at(metres));
    return new Vec2(at.x(), at.y());
  }

  /** The world place below a place of the plan, as far as that is told. */
  Vec3 world(Vec2 place) {
    return sheet().apply(new Vec3(place.x(), place.y(), 0));
  }
}
