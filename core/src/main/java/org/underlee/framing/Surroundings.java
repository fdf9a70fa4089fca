package org.underlee.framing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.underlee.geom.Box;
import org.underlee.geom.Interval;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Transform;
import org.underlee.geom.Upright;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * The building around framing: what stands up like walls, what lies like floors and roofs, and
 * rooms. Answers are for single places in plan, so that a building of any outline is seen as it is.
 */
final class Surroundings {
  private static final Set<String> LYING =
      Set.of("IfcSlab", "IfcSlabStandardCase", "IfcSlabElementedCase", "IfcRoof");

  /** What closes a room at its sides. */
  private static final Set<String> STANDING =
      Set.of(
          "IfcWall",
          "IfcWallStandardCase",
          "IfcWallElementedCase",
          "IfcCurtainWall",
          "IfcWindow",
          "IfcDoor");

  /** Walls further away than this are those of another house, or of the garden. */
  static final double SIGHT = 12;

  /** A view is told in sectors of 15°: a wall with a doorway in it still closes a room. */
  private static final int SECTORS = 24;

  /** A bar bears on a wall that it reaches to within a plate and a drawing's accuracy. */
  private static final double BEARING = 0.06;

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private record Standing(PlanShape plan, Box bounds, boolean isWall) {
    static Standing of(BuildingElement e) {
      return new Standing(
          PlanShape.of(e.shape(), Transform.IDENTITY),
          e.shape().bounds(),
          e.ifcClass().startsWith("IfcWall"));
    }

    boolean isWithin(double distance, Geometry place) {
      Coordinate[] ring =
          plan.hull().stream().map(p -> new Coordinate(p.x(), p.y())).toArray(Coordinate[]::new);
      return new ConvexHull(ring, FACTORY).getConvexHull().isWithinDistance(place, distance);
    }
  }

  private record Lying(BuildingElement element) {}

  private final STRtree walls = new STRtree();
  private final STRtree covers = new STRtree();
  private final STRtree rooms = new STRtree();
  private final ElementSource source;

  Surroundings(ElementSource source) {
    this.source = source;
    List<BuildingElement> solid =
        source.elements().stream().filter(e -> !e.shape().isEmpty()).toList();
    solid.parallelStream()
        .filter(e -> STANDING.contains(e.ifcClass()))
        .map(Standing::of)
        .toList()
        .forEach(s -> walls.insert(envelope(s.bounds, 0), s));
    solid.stream()
        .filter(e -> LYING.contains(e.ifcClass()) || isRoofing(e))
        .forEach(e -> covers.insert(envelope(e.shape().bounds(), 0), new Lying(e)));
    source.spaces().stream()
        .filter(e -> !e.shape().isEmpty())
        .forEach(e -> rooms.insert(envelope(e.shape().bounds(), 0), new Lying(e)));
    List.of(walls, covers, rooms).forEach(STRtree::build);
  }

  private static Envelope envelope(Box box, double by) {
    Envelope flat = new Envelope(box.min().x(), box.max().x(), box.min().y(), box.max().y());
    flat.expandBy(by);
    return flat;
  }

  private static <T> List<T> near(STRtree tree, Box box, double by, Class<T> kind) {
    List<T> found = new ArrayList<>();
    for (Object hit : tree.query(envelope(box, by))) {
      found.add(kind.cast(hit));
    }
    return found;
  }

  private static boolean isRoofing(BuildingElement e) {
    return e.ifcClass().equals("IfcCovering") && e.predefinedType().equals("ROOFING");
  }

  static boolean isRoof(BuildingElement e) {
    return e.ifcClass().equals("IfcRoof") || e.predefinedType().startsWith("ROOF");
  }

  /** Whether an element is said to be outside, or inside, by its property sets. */
  Optional<Boolean> isExternal(BuildingElement element) {
    return source.isExternal(element.instance());
  }

  /** Floors and roofs at a place in plan, each with the heights that it takes up there. */
  List<Found> covers(Vec3 place) {
    return at(covers, place);
  }

  /** Rooms at a place in plan. */
  List<Found> rooms(Vec3 place) {
    return at(rooms, place);
  }

  /** Whether something that stands like a wall is in sight of a place. */
  boolean hasWallsAround(Vec3 place) {
    return near(walls, new Box(place, place), SIGHT, Standing.class).stream()
        .anyMatch(w -> isInSight(w, place));
  }

  /** Whether elements of a class stand around rooms, and so have a say from as far as one sees. */
  static boolean isStanding(String ifcClass) {
    return STANDING.contains(ifcClass);
  }

  /** Whether one end of a bar bears in or on a wall. */
  boolean isOnWall(OrientedBox bar, int end) {
    Vec3 p = bar.end(end);
    Vec3 bottom = p.minus(bar.up().times(Math.signum(bar.up().z()) * bar.depth() / 2));
    Box near = new Box(p, p).with(bottom).grown(BEARING);
    Geometry place = FACTORY.createPoint(new Coordinate(p.x(), p.y()));
    return near(walls, near, 0, Standing.class).stream()
        .anyMatch(w -> w.isWall && w.bounds.meets(near) && w.isWithin(BEARING, place));
  }

  /** Something at a place in plan. */
  record Found(BuildingElement element, Interval heights) {}

  private static List<Found> at(STRtree tree, Vec3 p) {
    return near(tree, new Box(p, p), 0, Lying.class).stream()
        .map(l -> new Found(l.element, Upright.heightsAt(l.element.shape(), p.x(), p.y())))
        .filter(f -> !f.heights.isEmpty())
        .toList();
  }

  /**
   * The share of the view that walls close around places near each other, on average.
   *
   * @param heights walls count that cover all of these
   */
  double closed(List<Vec3> places, Interval heights) {
    Box all = Box.around(places.stream().map(p -> new Box(p, p)).toList());
    // Those of all storeys lie above each other: looked through once, not for each place.
    List<Standing> tall =
        near(walls, all, SIGHT, Standing.class).stream()
            .filter(w -> w.bounds.min().z() <= heights.from() && w.bounds.max().z() >= heights.to())
            .toList();
    return places.stream().mapToDouble(p -> closed(p, tall)).average().orElse(0);
  }

  private static double closed(Vec3 place, List<Standing> walls) {
    boolean[] sectors = new boolean[SECTORS];
    for (Standing wall : walls) {
      if (isInSight(wall, place)) {
        mark(sectors, wall.plan.hull(), place);
      }
    }
    int closed = 0;
    for (boolean sector : sectors) {
      closed += sector ? 1 : 0;
    }
    return closed / (double) SECTORS;
  }

  private static boolean isInSight(Standing wall, Vec3 p) {
    double x = Math.max(0, Math.max(wall.bounds.min().x() - p.x(), p.x() - wall.bounds.max().x()));
    double y = Math.max(0, Math.max(wall.bounds.min().y() - p.y(), p.y() - wall.bounds.max().y()));
    return Math.hypot(x, y) <= SIGHT;
  }

  /** Marks the sectors that a convex outline is seen in; all of them from inside it. */
  private static void mark(boolean[] sectors, List<Vec2> hull, Vec3 place) {
    double first = Math.atan2(hull.get(0).y() - place.y(), hull.get(0).x() - place.x());
    double angle = 0;
    double low = 0;
    double high = 0;
    for (int i = 1; i < hull.size(); i++) {
      double next = Math.atan2(hull.get(i).y() - place.y(), hull.get(i).x() - place.x());
      angle += Math.IEEEremainder(next - first - angle, 2 * Math.PI);
      low = Math.min(low, angle);
      high = Math.max(high, angle);
    }
    double step = 2 * Math.PI / SECTORS;
    int from = (int) Math.floor((first + low) / step);
    int to = (int) Math.floor((first + high) / step);
    for (int i = from; i <= Math.min(to, from + SECTORS - 1); i++) {
      sectors[Math.floorMod(i, SECTORS)] = true;
    }
  }
}
