package org.underlee.check;

import java.util.List;
import org.underlee.geom.Box;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.layout.Part;

/**
 * A part with the box around it in the frame of its field: x across, y down the fall, z up.
 *
 * @param box empty for parts that are counted and not drawn
 * @param floor around the first of its bodies, which water runs on
 */
public record Placed(Part part, Box box, Box floor) {
  static Placed of(Part part, Transform frame) {
    List<Extrusion> bodies = part.bodies();
    Box floor = around(bodies.subList(0, 1), frame);
    Box box = floor.union(around(bodies.subList(1, bodies.size()), frame));
    return new Placed(part, box, floor);
  }

  /** The part where it stands now; its floor is taken to have moved with it. */
  static Placed of(Part part, Mesh now, Transform frame) {
    Placed meant = of(part, frame);
    Box box = Box.EMPTY;
    for (int i = 0; i < now.vertexCount(); i++) {
      box = box.with(frame.toLocal(now.vertex(i)));
    }
    Vec3 moved = box.min().minus(meant.box.min());
    Box floor = new Box(meant.floor.min().plus(moved), meant.floor.max().plus(moved));
    return new Placed(part, box, floor);
  }

  static Box around(List<Extrusion> bodies, Transform frame) {
    Box box = Box.EMPTY;
    for (Extrusion body : bodies) {
      box = box.union(body.boundsIn(frame));
    }
    return box;
  }

  static List<Placed> all(List<Part> parts, Transform frame) {
    return parts.parallelStream()
        .filter(p -> !p.bodies().isEmpty())
        .map(p -> of(p, frame))
        .toList();
  }
}
