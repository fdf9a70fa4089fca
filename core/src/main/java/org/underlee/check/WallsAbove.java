package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Field;
import org.underlee.geom.Box;
import org.underlee.geom.Interval;
import org.underlee.geom.Transform;

/**
 * Walls that rise beside a deck: driven rain runs down them onto it. A wall at the high end adds to
 * the bays below its length; one at either side adds to the outermost bay. Walls behind or over
 * each other count once. Their boxes are taken, openings and slants included.
 */
final class WallsAbove {
  private static final Set<String> WALLS =
      Set.of("IfcWall", "IfcWallStandardCase", "IfcWallElementedCase", "IfcCurtainWall");

  /** A ledger with its spacers, and a wall's cladding, are no thicker than this. */
  private static final double BESIDE = 0.3;

  private final List<BuildingElement> walls;
  private final double share;

  /** By the field's id: each of its bays asks for the same again. */
  private final Map<String, Beside> near = new ConcurrentHashMap<>();

  /** Each layout of a drag asks for the same parts of fields again. */
  private final Map<Part, Double> areas = new ConcurrentHashMap<>();

  private record Part(String field, Interval across) {}

  /**
   * A field with what stands beside it, in its frame.
   *
   * @param top of its joists
   * @param walls their boxes
   */
  private record Beside(Interval width, Interval along, double top, List<Box> walls) {}

  private WallsAbove(List<BuildingElement> walls, double share) {
    this.walls = walls;
    this.share = share;
  }

  /**
   * @param share of a wall's area that counts as deck
   */
  static WallsAbove among(List<BuildingElement> elements, double share) {
    return new WallsAbove(
        elements.stream().filter(e -> WALLS.contains(e.ifcClass())).toList(), share);
  }

  /**
   * The area that they add to a part of a field.
   *
   * @param across in the field's frame
   * @return m² of deck
   */
  double area(Field field, Interval across) {
    return areas.computeIfAbsent(new Part(field.id(), across), part -> worked(field, across));
  }

  private double worked(Field field, Interval across) {
    Beside beside = near.computeIfAbsent(field.id(), id -> beside(field));
    Interval along = beside.along;
    double top = beside.top;
    List<Geometry> heads = new ArrayList<>();
    List<Geometry> sides = new ArrayList<>();
    for (Box box : beside.walls) {
      if (box.max().z() > top && Math.abs(box.max().y() - along.from()) < BESIDE) {
        heads.add(face(across, box.min().x(), box.max().x(), top, box.max().z()));
      } else if (box.max().z() > top && isAtSide(box, beside.width, across)) {
        sides.add(face(along, box.min().y(), box.max().y(), top, box.max().z()));
      }
    }
    return share * (union(heads) + union(sides));
  }

  private Beside beside(Field field) {
    Interval width = field.across();
    Interval along = field.along();
    Transform toField = field.frame().inverse();
    // most of a building's walls are far off: eight corners tell, without all of their vertices
    List<Box> boxes =
        walls.stream()
            .filter(w -> mayBeBeside(w.shape().bounds().moved(toField), width, along))
            .map(field::boxOf)
            .toList();
    return new Beside(width, along, field.top() - field.frame().origin().z(), boxes);
  }

  private static boolean mayBeBeside(Box around, Interval width, Interval along) {
    return around.max().x() > width.from() - BESIDE
        && around.min().x() < width.to() + BESIDE
        && around.max().y() > along.from() - BESIDE
        && around.min().y() < along.to() + BESIDE;
  }

  /** Whether it stands at the side of the field that this part of it ends at. */
  private static boolean isAtSide(Box box, Interval width, Interval part) {
    boolean low = Math.abs(box.max().x() - width.from()) < BESIDE;
    boolean high = Math.abs(box.min().x() - width.to()) < BESIDE;
    return (low && part.from() - width.from() < BESIDE)
        || (high && width.to() - part.to() < BESIDE);
  }

  private static Geometry face(Interval shown, double from, double to, double low, double high) {
    double start = Math.max(shown.from(), from);
    double end = Math.max(start, Math.min(shown.to(), to));
    return new GeometryFactory().toGeometry(new Envelope(start, end, low, high));
  }

  private static double union(List<Geometry> faces) {
    return faces.isEmpty() ? 0 : UnaryUnionOp.union(faces).getArea();
  }
}
