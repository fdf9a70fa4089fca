package org.underlee.drainage;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.underlee.geom.Transform;
import org.underlee.layout.Onto;

/**
 * What is to be proved for one joist field.
 *
 * @param field {@code deck-1/field-1}
 * @param frame x down the fall, y across the joists, z up; rigid
 * @param catchments no two overlap
 * @param pieces the assembly and the joists; boards are left out, as they let water through
 * @param ground height of the ground in the frame, where it is known
 * @param arrivals rain of other areas that comes onto the field
 * @param beyond of the pieces, those of the other side of the field's high line
 */
public record DrainCase(
    String field,
    Transform frame,
    List<Catchment> catchments,
    List<Piece> pieces,
    OptionalDouble ground,
    List<Arrival> arrivals,
    Set<String> beyond) {
  public DrainCase {
    arrivals = List.copyOf(arrivals);
    beyond = Set.copyOf(beyond);
    catchments = List.copyOf(catchments);
    pieces = List.copyOf(pieces);
  }

  /** With its own rain only, of a field that no other shares a high line with. */
  public DrainCase(
      String field,
      Transform frame,
      List<Catchment> catchments,
      List<Piece> pieces,
      OptionalDouble ground) {
    this(field, frame, catchments, pieces, ground, List.of(), Set.of());
  }

  /** Whether a piece hangs below this field. */
  boolean isOwn(String piece) {
    return !beyond.contains(piece);
  }

  /** The same with rain of other areas, each at its place. */
  public DrainCase with(List<Onto> onto) {
    List<Arrival> there =
        onto.stream()
            .map(
                o ->
                    new Arrival(
                        o.area(), frame.toLocal(o.place()).x(), frame.toLocal(o.place()).y()))
            .toList();
    return new DrainCase(field, frame, catchments, pieces, ground, there, beyond);
  }
}
