package org.underlee.framing;

import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * The line inside the joists that a field falls away from, on a deck that drains both ways: it is
 * station 0 of the field's frame, and another field falls away from it on the other side.
 *
 * @param other id of that field
 * @param first whether what lies over the line is counted with this field
 * @param station of the line in the frame of the whole field, metres from its high end
 * @param asked whether the user put it there
 */
public record HighLine(String other, boolean first, double station, boolean asked) {
  /** The same beside a field of another name. */
  public HighLine beside(String name) {
    return new HighLine(name, first, station, asked);
  }

  /** Where it is and why there. */
  public Words words() {
    return Words.of(
        asked
            ? "the high line is %s from the high end of the whole field, where you put it"
            : "the high line is %s from the high end of the whole field, as near to its middle as"
                + " what stands in the bays lets it",
        Quantity.length(station));
  }
}
