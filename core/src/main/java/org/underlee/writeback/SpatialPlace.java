package org.underlee.writeback;

import org.underlee.geom.Transform;

/**
 * A storey, building or site of the designer's that ours are put under.
 *
 * @param placement of the element, or unset where it has none that can be read
 * @param frame of that placement in world metres; the identity where there is none
 */
record SpatialPlace(Value element, Value placement, Transform frame) {
  static final SpatialPlace WORLD = unplaced(Value.UNSET);

  static SpatialPlace unplaced(Value element) {
    return new SpatialPlace(element, Value.UNSET, Transform.IDENTITY);
  }

  boolean isWorld() {
    return element.equals(Value.UNSET);
  }
}
