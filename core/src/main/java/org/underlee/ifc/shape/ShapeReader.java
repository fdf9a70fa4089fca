package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.util.AssertionFailedException;
import org.underlee.geom.Mesh;
import org.underlee.step.StepInstance;

/**
 * Reads representation items. Which class reads an entity is decided in one table, filled in the
 * constructor: to read another entity, write an {@link ItemReader} and enter it there.
 *
 * <p>Meshes are in file units and local coordinates. Openings are not cut out of the things they
 * belong to: a wall with a window is read as if whole. Not for use by several threads at once.
 */
public final class ShapeReader {
  /** Items inside items deeper than this are taken for damage. */
  private static final int MAX_DEPTH = 200;

  /** Maps of maps can ask for any number; one element of a building never needs this many. */
  private static final int MAX_TRIANGLES = 5_000_000;

  private final Map<String, ItemReader> readers = new HashMap<>();

  /** The items being read, outermost first. */
  private final Set<Long> path = new LinkedHashSet<>();

  public ShapeReader(double radiansPerAngleUnit) {
    Sweeps sweeps = new Sweeps(new Profiles(new Curves(radiansPerAngleUnit)));
    readers.putAll(sweeps.readers());
    readers.putAll(new FaceShells().readers());
    readers.putAll(new FaceSets().readers());
    readers.putAll(new MappedItems(this).readers());
    readers.putAll(new Booleans(this, sweeps, new Curves(radiansPerAngleUnit)).readers());
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
      if (triangles > MAX_TRIANGLES) {
        throw Unreadable.degenerate(representation, "more than " + MAX_TRIANGLES + " triangles");
      }
    }
    return parts.size() == 1 ? parts.get(0) : Mesh.union(parts);
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
      return reader.read(item);
    } catch (ArithmeticException
        | IllegalArgumentException
        | IllegalStateException
        | AssertionFailedException
        | TopologyException e) {
      throw Unreadable.degenerate(item, "its geometry is unsound: " + e.getMessage());
    } finally {
      path.remove(item.id());
    }
  }
}
