package org.underlee.bay;

import java.util.Optional;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Interval;

/**
 * A service or other element in the space that a bay's assembly may need. Intervals are of the part
 * inside that space, in the field's frame.
 *
 * @param insulation the covering around the element, where one is modelled
 * @param size outside diameter of a round element, else the greater side of its section; over the
 *     insulation
 * @param round whether its section is a circle
 * @param at station of its centre from the high end of the bay
 * @param across from the face of the bay's first line to its centre
 */
public record Crossing(
    BuildingElement element,
    Optional<BuildingElement> insulation,
    Way way,
    double size,
    boolean round,
    double at,
    double across,
    Interval stretch,
    Interval acrossStretch,
    Interval heights) {

  /** The same element with what is wrapped around it. */
  Crossing wrappedIn(Crossing covering) {
    return new Crossing(
        element,
        Optional.of(covering.element),
        way,
        Math.max(size, covering.size),
        round,
        at,
        across,
        stretch.join(covering.stretch),
        acrossStretch.join(covering.acrossStretch),
        heights.join(covering.heights));
  }
}
