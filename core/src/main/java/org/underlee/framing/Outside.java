package org.underlee.framing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.geom.Interval;
import org.underlee.geom.Vec3;

/**
 * Judges whether a field is an outside deck: floors of rooms, roofs and ceilings are framed in the
 * same way. Each piece of evidence weighs for or against; the sum decides, and all of it is told.
 * Nothing at all is taken for outside, as a model of a deck alone has nothing but the deck.
 *
 * <p>The weights are our own: what shows a room or a roof outweighs any one sign of a deck, and two
 * signs of a deck outweigh it, as boards with open joints and a guard do on a deck above a room.
 */
final class Outside {
  /** A wall must rise this far above the joists: a parapet or a guard does not make a room. */
  private static final Interval ABOVE = new Interval(0.8, 1.5);

  /** Walls of a room below reach through this stretch under the joists. */
  private static final Interval BELOW = new Interval(-1.5, -0.8);

  /** Half of what is seen from an edge is free; a room is closed all round but for a corner. */
  private static final double ALL_ROUND = 0.85;

  /** A wall along one side closes up to half of the view. */
  private static final double ONE_SIDE = 0.2;

  /** A roof's layers lie this near to what carries them. */
  private static final Interval ROOF_ON = new Interval(-0.3, 0.5);

  /** Nobody walks where something hangs lower than this. */
  private static final double HEADROOM = 1.8;

  /** Bars are in a slab that goes on this far above and below their tops. */
  private static final double INSIDE_SLAB = 0.03;

  /** Half way up a room that stands on a floor, or down in the room below it. */
  private static final double IN_ROOM = 1;

  /** Most of the places that are looked at. */
  private static final double MOST = 0.5;

  /**
   * Where nothing is known the framing in a file is that of a deck; one weak sign bends no vote.
   */
  private static final int PRIOR = 1;

  private static final int ROOM = -4;
  private static final int ROOF = -3;
  private static final int SIGN = 2;

  private record Evidence(int weight, String words) {}

  private final Surroundings around;
  private final DeckSigns signs;
  private final Told told;

  Outside(Surroundings around, DeckSigns signs, Told told) {
    this.around = around;
    this.signs = signs;
    this.told = told;
  }

  Deck.Judgement of(Field field) {
    return told.outside(field.lines().stream().flatMap(l -> l.plies().stream()))
        .map(value -> new Deck.Judgement(value, Told.WHY))
        .orElseGet(() -> weighed(field));
  }

  private Deck.Judgement weighed(Field field) {
    List<Vec3> places = places(field);
    double top = field.top();
    double bottom = field.frame().origin().z();
    List<Evidence> all = new ArrayList<>();
    walls(places, top, bottom).ifPresent(all::add);
    rooms(places, top, bottom).ifPresent(all::add);
    roof(places, top).ifPresent(all::add);
    said(field).ifPresent(all::add);
    held(field, places).ifPresent(all::add);
    signs.boards(field).ifPresent(w -> all.add(new Evidence(SIGN + 1, w)));
    signs.guard(field).ifPresent(w -> all.add(new Evidence(SIGN, w)));
    return judged(all);
  }

  private static Deck.Judgement judged(List<Evidence> all) {
    boolean outside = all.stream().mapToInt(Evidence::weight).sum() + PRIOR >= 0;
    String held = words(all, e -> e.weight > 0 == outside);
    String against = words(all, e -> e.weight > 0 != outside);
    return new Deck.Judgement(
        outside,
        (held.isEmpty() ? "nothing in the model shows a room or a roof" : held)
            + (against.isEmpty() ? "" : "; against that, " + against));
  }

  private static String words(List<Evidence> all, Predicate<Evidence> which) {
    return all.stream()
        .filter(which)
        .sorted(Comparator.comparingInt(e -> -Math.abs(e.weight)))
        .map(Evidence::words)
        .collect(Collectors.joining("; "));
  }

  private Optional<Evidence> walls(List<Vec3> places, double top, double bottom) {
    double above = closed(places, top, ABOVE);
    double below = closed(places, bottom, BELOW);
    if (above >= ALL_ROUND) {
      return Optional.of(
          new Evidence(ROOM, "walls rise around it (" + percent(above) + " of the view): a room"));
    }
    if (below >= ALL_ROUND) {
      return Optional.of(
          new Evidence(
              ROOF,
              "walls stand around what is below it ("
                  + percent(below)
                  + " of the view): a floor or a roof over a room"));
    }
    return above >= ONE_SIDE
        ? Optional.of(
            new Evidence(
                SIGN, "walls rise beside it, and " + percent(1 - above) + " of the view is open"))
        : Optional.empty();
  }

  private double closed(List<Vec3> places, double z, Interval reach) {
    Interval heights = new Interval(z + reach.from(), z + reach.to());
    return around.closed(places, heights);
  }

  private Optional<Evidence> rooms(List<Vec3> places, double top, double bottom) {
    for (boolean outside : new boolean[] {true, false}) {
      if (mostly(places, p -> isInRoom(p, top + IN_ROOM, outside))) {
        return Optional.of(
            outside
                ? new Evidence(-ROOM, "it is the floor of a space outside")
                : new Evidence(ROOM, "it is the floor of a room"));
      }
    }
    return mostly(places, p -> isInRoom(p, bottom - IN_ROOM, false))
        ? Optional.of(new Evidence(ROOF, "a room lies below it"))
        : Optional.empty();
  }

  private boolean isInRoom(Vec3 place, double z, boolean outside) {
    return around.rooms(place).stream()
        .filter(r -> r.heights().contains(z))
        .anyMatch(r -> isOutside(r.element()) == outside);
  }

  private boolean isOutside(BuildingElement room) {
    return room.predefinedType().startsWith("EXTERNAL")
        || around.isExternal(room).orElse(Boolean.FALSE);
  }

  private Optional<Evidence> roof(List<Vec3> places, double top) {
    Interval on = new Interval(top + ROOF_ON.from(), top + ROOF_ON.to());
    Interval low = new Interval(top + ROOF_ON.to(), top + HEADROOM);
    if (mostly(places, p -> covers(p, new Interval(top, top)).anyMatch(f -> isIn(f, top)))) {
      return Optional.of(new Evidence(ROOM, "its bars lie inside a slab"));
    }
    if (mostly(places, p -> covers(p, on).anyMatch(f -> Surroundings.isRoof(f.element())))) {
      return Optional.of(new Evidence(ROOF, "a roof lies on it"));
    }
    return mostly(places, p -> covers(p, low).findAny().isPresent())
        ? Optional.of(new Evidence(ROOF, "there is no headroom above it"))
        : Optional.empty();
  }

  /** Whether a slab reaches from above the joists' tops to well below them. */
  private static boolean isIn(Surroundings.Found slab, double top) {
    return slab.heights().from() < top - INSIDE_SLAB && slab.heights().to() > top + INSIDE_SLAB;
  }

  private Stream<Surroundings.Found> covers(Vec3 place, Interval heights) {
    return around.covers(place).stream().filter(f -> !f.heights().meet(heights).isEmpty());
  }

  /** What the author's property sets and types say of the joists. */
  private Optional<Evidence> said(Field field) {
    List<BuildingElement> joists =
        field.lines().stream().flatMap(l -> l.plies().stream()).map(Member::element).toList();
    if (mostly(joists, j -> List.of("RAFTER", "PURLIN").contains(j.predefinedType()))) {
      return Optional.of(new Evidence(ROOF, "its bars are typed as rafters or purlins"));
    }
    // inside is what many programs write when nobody has said anything, so it weighs less
    return mostly(joists, j -> around.isExternal(j).orElse(Boolean.FALSE))
        ? Optional.of(new Evidence(SIGN, "IsExternal says that the joists are outside"))
        : mostly(joists, j -> !around.isExternal(j).orElse(Boolean.TRUE))
            ? Optional.of(new Evidence(-1, "IsExternal says that the joists are inside"))
            : Optional.empty();
  }

  /** A deck hangs on the house at one end; a floor or a roof lies on walls at both. */
  private Optional<Evidence> held(Field field, List<Vec3> places) {
    List<Member> joists = field.lines().stream().flatMap(l -> l.plies().stream()).toList();
    boolean tail = mostly(joists, j -> around.isOnWall(j.box(), -1));
    boolean tip = mostly(joists, j -> around.isOnWall(j.box(), 1));
    if (tail && tip) {
      return Optional.of(new Evidence(ROOF, "its joists run from wall to wall"));
    }
    boolean free = field.high().isEmpty() && field.low().isEmpty() && field.dropBeams().isEmpty();
    return free && !tail && !tip && places.stream().anyMatch(around::hasWallsAround)
        ? Optional.of(new Evidence(ROOF, "nothing holds its bars"))
        : Optional.empty();
  }

  private static <T> boolean mostly(List<T> all, Predicate<T> test) {
    return all.stream().filter(test).count() > MOST * all.size();
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.0f %%", share * 100);
  }

  /** Nine places spread over the field, in the world. */
  private static List<Vec3> places(Field field) {
    Interval across = field.across();
    Interval along = field.along();
    List<Vec3> places = new ArrayList<>();
    for (double s : new double[] {0.2, 0.5, 0.8}) {
      for (double t : new double[] {0.2, 0.5, 0.8}) {
        places.add(
            field
                .frame()
                .apply(
                    new Vec3(
                        across.from() + s * across.length(),
                        along.from() + t * along.length(),
                        0)));
      }
    }
    return places;
  }
}
