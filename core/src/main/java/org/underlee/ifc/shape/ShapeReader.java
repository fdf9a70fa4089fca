package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.util.AssertionFailedException;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.step.StepInstance;

/**
 * Reads representation items. Which class reads an entity is decided in one table, filled in the
 * constructor: to read another entity, write an {@link ItemReader} and enter it there.
 *
 * <p>Meshes are in file units and local coordinates. Not for use by several threads at once.
 */
public final class ShapeReader {
  /** Items inside items deeper than this are taken for damage. */
  private static final int MAX_DEPTH = 200;

  /** How far polylines and facets may leave the curves that they stand for. */
  private static final double SAG_METRES = 0.0005;

  /**
   * Openings are often drawn to end in the faces of their wall, but for the last digits: what is
   * thinner than this is not left standing.
   */
  private static final double OPENING_GRID_METRES = 0x1p-20;

  private final Map<String, ItemReader> readers = new HashMap<>();

  /** The items being read, outermost first. */
  private final Set<Long> path = new LinkedHashSet<>();

  private final double openingGrid;

  private final Cutters cutters;

  /**
   * A reader for one file.
   *
   * @param metresPerUnit how long the file's unit of length is
   */
  public ShapeReader(double radiansPerAngleUnit, double metresPerUnit) {
    Curves curves = Curves.bounding(radiansPerAngleUnit, SAG_METRES / metresPerUnit);
    Profiles profiles = new Profiles(curves);
    Sweeps sweeps = new Sweeps(profiles);
    cutters = new Cutters(this, sweeps, curves);
    openingGrid = OPENING_GRID_METRES / metresPerUnit;
    readers.putAll(sweeps.readers());
    readers.putAll(new Revolutions(profiles, curves).readers());
    readers.putAll(new DirectrixSweeps(profiles, curves).readers());
    readers.putAll(new AlignmentSweeps(profiles, curves).readers());
    readers.putAll(new FaceShells(curves).readers());
    readers.putAll(new FaceSets().readers());
    readers.putAll(new MappedItems(this).readers());
    readers.putAll(new Booleans(this, cutters).readers());
    readers.put("IFCBOUNDINGBOX", BoundingBoxes::read);
  }

  /**
   * All items of a shape representation as one mesh.
   *
   * @throws org.underlee.finding.InputException when one of them cannot be read
   */
  public Mesh representation(StepInstance representation) {
    List<Mesh> parts = new ArrayList<>();
    int triangles = 0;
    for (StepInstance item : representation.followAll(3)) {
      Mesh part = read(item);
      parts.add(part);
      triangles += part.triangleCount();
      if (triangles > MeshBuilder.MAX_TRIANGLES) {
        throw Unreadable.degenerate(representation, MeshBuilder.TOO_MANY);
      }
    }
    return parts.size() == 1 ? parts.get(0) : Mesh.union(parts);
  }

  /** What an opening takes away from the body that it is in. */
  public static final class Hole {
    private final StepInstance representation;
    private final List<Cutter> cutters;

    private Hole(StepInstance representation, List<Cutter> cutters) {
      this.representation = representation;
      this.cutters = cutters;
    }
  }

  /**
   * The hole that an opening's representation makes.
   *
   * @param toBody from the opening's coordinates to the body's, rigid
   * @throws org.underlee.finding.InputException when an item cannot be read
   */
  public Hole hole(StepInstance representation, Transform toBody) {
    return new Hole(
        representation,
        representation.followAll(3).stream()
            .map(item -> guarded(item, () -> cutters.read(item).transformed(toBody)))
            .toList());
  }

  /**
   * A body less holes; empty when nothing is left.
   *
   * @param work what may be spent on it
   * @throws org.underlee.finding.InputException when they cannot be cut out
   */
  public Mesh cut(Mesh body, List<Hole> holes, CutWork work) {
    Mesh whole = MeshBuilder.welded(body);
    double grid = Math.max(openingGrid, PlaneCut.grid(whole));
    List<Cutter> all = holes.stream().flatMap(hole -> hole.cutters.stream()).toList();
    return guarded(holes.get(0).representation, () -> Cutter.takeAll(whole, all, grid, work));
  }

  /** One item, guarded against items that contain themselves. */
  Mesh read(StepInstance item) {
    ItemReader reader = readers.get(item.keyword());
    if (reader == null) {
      throw Unreadable.unsupported(item, " as a body");
    }
    if (path.size() == MAX_DEPTH || !path.add(item.id())) {
      String through = path.stream().map(id -> "#" + id).collect(Collectors.joining(" → "));
      throw Unreadable.degenerate(item, "the shape contains itself: " + through);
    }
    try {
      return guarded(item, () -> reader.read(item));
    } finally {
      path.remove(item.id());
    }
  }

  /** Turns what geometry libraries throw at unsound input into an error about the item. */
  private static <T> T guarded(StepInstance item, Supplier<T> work) {
    try {
      return work.get();
    } catch (CutWork.TooMuch e) {
      throw Unreadable.degenerate(item, "it is too much work: " + e.getMessage());
    } catch (ArithmeticException
        | IllegalArgumentException
        | IllegalStateException
        | IndexOutOfBoundsException
        | AssertionFailedException
        | TopologyException e) {
      throw Unreadable.degenerate(item, "its geometry is unsound: " + e.getMessage());
    }
  }
}
