package org.underlee.drainage;

import java.util.List;
import java.util.OptionalDouble;
import org.underlee.geom.Transform;

/**
 * What is to be proved for one joist field.
 *
 * @param field {@code deck-1/field-1}
 * @param frame x down the fall, y across the joists, z up; rigid
 * @param catchments no two overlap
 * @param pieces the assembly and the joists; boards are left out, as they let water through
 * @param ground height of the ground in the frame, where it is known
 */
public record DrainCase(
    String field,
    Transform frame,
    List<Catchment> catchments,
    List<Piece> pieces,
    OptionalDouble ground) {
  public DrainCase {
    catchments = List.copyOf(catchments);
    pieces = List.copyOf(pieces);
  }
}
