package org.underlee.picture;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.locationtech.jts.algorithm.RayCrossingCounter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;

/**
 * A flat drawing together with what its areas stand for, in the order in which they were drawn:
 * later ones lie over earlier ones.
 */
public record PlanThings(ScaledDrawing drawing, List<Thing> things) {
  public PlanThings {
    things = List.copyOf(things);
  }

  /**
   * An area that stands for something.
   *
   * @param id of a part, or the GlobalId of an element of the model
   * @param outline as drawn
   */
  public record Thing(String id, Outline outline) {
    boolean covers(Vec2 place) {
      return isIn(outline.outer(), place)
          && outline.holes().stream().noneMatch(h -> isIn(h, place));
    }

    private static boolean isIn(List<Vec2> ring, Vec2 place) {
      Coordinate[] closed =
          Stream.concat(ring.stream(), Stream.of(ring.get(0)))
              .map(p -> new Coordinate(p.x(), p.y()))
              .toArray(Coordinate[]::new);
      Coordinate at = new Coordinate(place.x(), place.y());
      return RayCrossingCounter.locatePointInRing(at, closed) != Location.EXTERIOR;
    }
  }

  /** The id of what is seen at a place of the drawing. */
  public Optional<String> at(Vec2 place) {
    for (int i = things.size() - 1; i >= 0; i--) {
      if (things.get(i).covers(place)) {
        return Optional.of(things.get(i).id());
      }
    }
    return Optional.empty();
  }

  /** Points whose box holds some things; none where they are not drawn. */
  public List<Vec2> reach(Set<String> ids) {
    return things.stream()
        .filter(t -> ids.contains(t.id()))
        .flatMap(t -> t.outline().outer().stream())
        .toList();
  }
}
