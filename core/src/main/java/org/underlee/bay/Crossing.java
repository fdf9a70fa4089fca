package org.underlee.bay;

import org.underlee.framing.BuildingElement;
import org.underlee.geom.Interval;

/**
 * A service or other element in the space that a bay's assembly may need. Intervals are of the part
 * inside that space, in the field's frame.
 *
 * @param size outside diameter of a round element, else the greater side of its section
 * @param round whether its section is a circle
 * @param at station of its centre from the high end of the bay
 * @param across from the face of the bay's first line to its centre
 */
public record Crossing(
    BuildingElement element,
    Way way,
    double size,
    boolean round,
    double at,
    double across,
    Interval stretch,
    Interval acrossStretch,
    Interval heights) {}
