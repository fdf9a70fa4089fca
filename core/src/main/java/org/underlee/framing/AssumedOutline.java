package org.underlee.framing;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** Which slab or covering framing is assumed under, and which way its water goes. */
final class AssumedOutline {
  private static final Set<String> CLASSES =
      Set.of("IfcSlab", "IfcSlabStandardCase", "IfcSlabElementedCase", "IfcCovering", "IfcPlate");

  /** Square metres; a smaller slab is a landing or a plate. */
  private static final double SMALLEST = 1.5;

  /** A wall this near to an edge is the house, and rises this far above the deck. */
  private static final double NEAR_WALL = 0.3;

  private static final double WALL_RISE = 1.0;

  /** So many are named in a message. */
  private static final int NAMED = 5;

  private AssumedOutline() {}

  static BuildingElement choose(List<BuildingElement> elements, AssumedJoists joists) {
    if (joists.outline().isPresent()) {
      return named(elements, joists.outline().get());
    }
    List<BuildingElement> all = elements.stream().filter(AssumedOutline::mayBeADeck).toList();
    if (all.size() != 1) {
      throw new InputException(
          Place.NOWHERE,
          all.isEmpty()
              ? "the model has no slab or covering to assume framing under"
              : "framing can be assumed under any of " + all.size() + " slabs: " + listed(all),
          all.isEmpty()
              ? "Draw the deck as a slab, or name what has its outline with outline=GLOBALID."
              : "Name one with outline=GLOBALID.");
    }
    return all.get(0);
  }

  private static BuildingElement named(List<BuildingElement> elements, String globalId) {
    BuildingElement found =
        elements.stream()
            .filter(e -> e.globalId().equals(globalId))
            .findFirst()
            .orElseThrow(
                () ->
                    new InputException(
                        Place.NOWHERE,
                        "outline=" + globalId + ": no element with a body has this GlobalId",
                        "Copy the GlobalId of the slab or covering from the model."));
    if (plan(found).area() < SMALLEST) {
      throw new InputException(
          found.place(),
          "outline=" + globalId + ": this " + found.ifcClass() + " has no level top of deck size",
          "Name the slab or covering that stands for the deck.");
    }
    return found;
  }

  private static boolean mayBeADeck(BuildingElement e) {
    return CLASSES.contains(e.ifcClass())
        && !e.predefinedType().equals("BASESLAB")
        && plan(e).area() >= SMALLEST;
  }

  private static DeckOutline plan(BuildingElement element) {
    Vec3 centre = element.shape().bounds().centre();
    return DeckOutline.of(element.shape(), Transform.translation(centre));
  }

  private static String listed(List<BuildingElement> all) {
    return all.stream()
            .limit(NAMED)
            .map(e -> e.globalId() + (e.name().isEmpty() ? "" : " \"" + e.name() + "\""))
            .collect(Collectors.joining(", "))
        + (all.size() > NAMED ? " and " + (all.size() - NAMED) + " more" : "");
  }

  /** As the user says; else away from the longest edge that has a wall along it. */
  static Vec3 direction(
      BuildingElement slab, List<BuildingElement> elements, AssumedJoists joists) {
    if (joists.direction().isPresent()) {
      double angle = joists.direction().getAsDouble();
      return new Vec3(Math.cos(angle), Math.sin(angle), 0);
    }
    HouseWalls walls =
        new HouseWalls(elements.stream().filter(e -> e.instance() != slab.instance()).toList());
    Box box = slab.shape().bounds();
    Optional<DeckOutline.Edge> house =
        plan(slab).edges().stream()
            .filter(e -> isOnWall(e, walls, box))
            .max(Comparator.comparingDouble(DeckOutline.Edge::length));
    Vec2 out =
        house
            .map(DeckOutline.Edge::outward)
            .orElseThrow(
                () ->
                    new InputException(
                        slab.place(),
                        "no wall stands along this slab, so the way of the water is unknown",
                        "Give it in degrees from the model's x axis, like direction=90."));
    return new Vec3(-out.x(), -out.y(), 0);
  }

  private static boolean isOnWall(DeckOutline.Edge edge, HouseWalls walls, Box box) {
    List<Vec3> places =
        Stream.of(0.2, 0.5, 0.8)
            .map(edge::at)
            .map(p -> new Vec3(box.centre().x() + p.x(), box.centre().y() + p.y(), box.max().z()))
            .map(p -> p.plus(new Vec3(0, 0, WALL_RISE / 2)))
            .toList();
    return walls.wallsAbove(places, box.max().z() + WALL_RISE, NEAR_WALL) >= 2;
  }
}
