package org.underlee.picture;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.framing.Field;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** Where what is in the world stands in a {@link DeckPlan}, and the other way round. */
public final class PlanPlaces {
  private final Transform sheet;

  /**
   * @param first of the fields that are drawn: the sheet is turned by it
   */
  PlanPlaces(Field first) {
    Transform f = first.frame();
    this.sheet = new Transform(f.origin(), f.x().negated(), f.y().negated(), f.z());
  }

  /** A bay by its field's id and its own. */
  public record BayAt(String field, String bay) {}

  /** The bay at a place of the drawing. */
  public static Optional<BayAt> bayAt(List<FieldBays> fields, Vec2 place) {
    if (fields.isEmpty()) {
      return Optional.empty();
    }
    PlanPlaces plan = new PlanPlaces(fields.get(0).field());
    Vec3 world = plan.sheet.apply(new Vec3(place.x(), place.y(), 0));
    for (FieldBays field : fields) {
      Vec3 p = field.field().frame().toLocal(world);
      for (Bay bay : field.bays()) {
        if (bay.stretch().contains(p.y())
            && p.x() > bay.leftFace().at(p.y())
            && p.x() < bay.rightFace().at(p.y())) {
          return Optional.of(new BayAt(field.field().id(), bay.id()));
        }
      }
    }
    return Optional.empty();
  }

  /** From a place of the drawing, at height 0, to the world; empty where there is nothing drawn. */
  public static Optional<Transform> toWorld(List<FieldBays> fields) {
    return fields.stream().findFirst().map(f -> new PlanPlaces(f.field()).sheet);
  }

  /** Where each bay lies in the drawing, as its four corners. */
  public static Map<BayAt, List<Vec2>> outlines(List<FieldBays> fields) {
    Map<BayAt, List<Vec2>> outlines = new LinkedHashMap<>();
    for (FieldBays field : fields) {
      PlanPlaces plan = new PlanPlaces(fields.get(0).field());
      for (Bay bay : field.bays()) {
        outlines.put(new BayAt(field.field().id(), bay.id()), plan.corners(field.field(), bay));
      }
    }
    return outlines;
  }

  List<Vec2> corners(Field field, Bay bay) {
    double from = bay.stretch().from();
    double to = bay.stretch().to();
    return List.of(
        on(field, bay.leftFace().at(from), from),
        on(field, bay.rightFace().at(from), from),
        on(field, bay.rightFace().at(to), to),
        on(field, bay.leftFace().at(to), to));
  }

  /**
   * The middle of a bay.
   *
   * @param station metres from its high end
   */
  Vec2 middle(Field field, Bay bay, double station) {
    double v = bay.stretch().from() + station;
    return on(field, (bay.leftFace().at(v) + bay.rightFace().at(v)) / 2, v);
  }

  /** A place of a field, across and along its joists. */
  Vec2 on(Field field, double u, double v) {
    return ofWorld(field.frame().apply(new Vec3(u, v, 0)));
  }

  Vec2 ofWorld(Vec3 place) {
    Vec3 p = sheet.toLocal(place);
    return new Vec2(p.x(), p.y());
  }
}
