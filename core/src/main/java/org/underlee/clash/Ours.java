package org.underlee.clash;

import java.util.List;
import java.util.Optional;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;

/**
 * A part of the assembly.
 *
 * @param id {@code deck-1/field-1/B3/pan-1}
 * @param element as it is in a model, where it has been written
 * @param pieces the bodies it is made of
 */
public record Ours(
    String id, PartKind kind, Optional<BuildingElement> element, Mesh shape, List<Solid> pieces) {
  public Ours {
    pieces = List.copyOf(pieces);
  }

  /** As laid out. */
  public static Ours of(Part part) {
    return new Ours(
        part.id(),
        part.kind(),
        Optional.empty(),
        part.mesh(),
        part.bodies().stream().map(b -> Solid.of(b.mesh())).toList());
  }

  /** As it stands in a model. */
  public static Ours of(String id, PartKind kind, BuildingElement element) {
    return new Ours(id, kind, Optional.of(element), element.shape(), Pieces.of(element.shape()));
  }

  public Box bounds() {
    return shape.bounds();
  }

  /** {@code deck-1/field-1} */
  public String field() {
    return step(2);
  }

  /** {@code deck-1/field-1/B3}, or the field for a part that serves no bay alone. */
  String bay() {
    return step(3);
  }

  private String step(int steps) {
    String[] all = id.split("/", -1);
    return String.join("/", List.of(all).subList(0, Math.min(steps, all.length)));
  }

  /** Whether it lies between the joists, laid out around what it meets there. */
  boolean isInBay() {
    return switch (kind) {
      case PAN, SIDE_RAIL, HEAD_RAIL, RIDGE_CAP, PLY_STRIP, COLLAR_PIECE, SADDLE, TAPE -> true;
      case MEMBRANE, CAP_STRIP -> true;
      case SHEET, BATTEN, BATTEN_HANGER -> false;
      case GUTTER, FLASHING, OUTLET, END_CAP, HANGER, DOWNSPOUT, ELBOW, STRAP, FASTENER -> false;
    };
  }

  /** Whether it is a sheet that covers what is above it. */
  boolean isCover() {
    return kind.catchesWater();
  }
}
