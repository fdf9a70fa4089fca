package org.underlee.framing;

/**
 * The line inside the joists that a field falls away from, on a deck that drains both ways: it is
 * station 0 of the field's frame, and another field falls away from it on the other side.
 *
 * @param other id of that field
 * @param first whether what lies over the line is counted with this field
 */
public record HighLine(String other, boolean first) {}
