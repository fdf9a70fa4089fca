package org.underlee.writeback;

import org.underlee.geom.Transform;
import org.underlee.layout.Part;

/**
 * A part that has been written.
 *
 * @param frame of its placement, in world metres
 */
record PlacedPart(Part part, Value element, String globalId, Value placement, Transform frame) {
  IfcClass ifcClass() {
    return IfcClass.of(part.kind());
  }
}
