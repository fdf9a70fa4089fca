package org.underlee.picture;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Where texts and arrows of a plan have room at one scale: not on each other, and not on what a
 * text could not be read on.
 *
 * @param things blocking, crossings, gutters and posts
 * @param texts and arrows that have their place
 */
record PlanRoom(Room things, Room texts) {
  private static final Set<PlanStyle> TAKEN =
      Set.of(
          PlanStyle.BLOCKING,
          PlanStyle.CROSSING,
          PlanStyle.GUTTER,
          PlanStyle.POST,
          PlanStyle.DOWNSPOUT);

  static PlanRoom beside(PlanDrawing framing, double mm) {
    Room things = new Room(mm);
    framing.items().stream().filter(i -> TAKEN.contains(i.style())).forEach(things::take);
    return new PlanRoom(things, new Room(mm));
  }

  /** The first place that is free, or the first of all where none is. It is taken. */
  <T extends PlanItem> T place(List<T> places) {
    T place = free(places).orElse(places.get(0));
    texts.take(place);
    return place;
  }

  /** As {@link #place}, for what is left out where there is no room. */
  <T extends PlanItem> Optional<T> placeIfFree(List<T> places) {
    Optional<T> place = free(places);
    place.ifPresent(texts::take);
    return place;
  }

  private <T extends PlanItem> Optional<T> free(List<T> places) {
    return places.stream().filter(p -> texts.isFree(p) && things.isFree(p)).findFirst();
  }
}
