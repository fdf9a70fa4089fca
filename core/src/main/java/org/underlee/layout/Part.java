package org.underlee.layout;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.geom.Box;
import org.underlee.geom.Cuts;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;

/**
 * One piece to buy, cut and fix, in its place.
 *
 * @param id stable across runs on the same framing: {@code deck-1/field-1/B3/pan-1}
 * @param label what is written on the piece: {@code P3-1}
 * @param field the joist field it serves: {@code deck-1/field-1}
 * @param bay the bay it serves, where it serves one: {@code B3}
 * @param item the kit's stock item that it is cut from
 * @param length along its own axis, as fitted, metres
 * @param width across, metres, at its wider end
 * @param sheetWidth of the flat sheet it is folded from, where it is folded
 * @param sheetLength of that flat sheet, with what is folded up or down at the ends, where it is
 *     more than the length
 * @param fall drop over run along its axis, for parts that carry water
 * @param bodies its exact shape in world metres: pieces that touch and never overlap; empty for
 *     fasteners, which are counted and not drawn
 * @param section its cross-section, for pieces cut from a formed length
 * @param count how many pieces this stands for: one, or the number of fasteners
 * @param cuts notches, holes and slits, each dimensioned from the part's own ends and edges
 * @param why what it is for, and where each of its numbers comes from
 */
public record Part(
    String id,
    String label,
    PartKind kind,
    String field,
    Optional<String> bay,
    String item,
    double length,
    double width,
    OptionalDouble sheetWidth,
    OptionalDouble sheetLength,
    OptionalDouble fall,
    List<Extrusion> bodies,
    Optional<Outline> section,
    int count,
    List<Cut> cuts,
    Why why) {
  public Part {
    bodies = List.copyOf(bodies);
    cuts = List.copyOf(cuts);
  }

  /** The length to cut. */
  public double cutLength() {
    return sheetLength.orElse(length);
  }

  /** Volume of its material, cubic metres. */
  public double volume() {
    double volume = 0;
    for (Extrusion body : bodies) {
      volume += body.volume();
    }
    return volume;
  }

  /** Its reach: as that of its mesh, and much sooner. */
  public Box bounds() {
    return Box.around(bodies.stream().map(Extrusion::bounds).toList());
  }

  public Mesh mesh() {
    return Mesh.union(bodies.stream().map(Extrusion::mesh).toList());
  }

  /** As {@link #mesh()}, for many that have sections in common. */
  public Mesh mesh(Cuts cuts) {
    return Mesh.union(bodies.stream().map(b -> b.mesh(cuts)).toList());
  }
}
