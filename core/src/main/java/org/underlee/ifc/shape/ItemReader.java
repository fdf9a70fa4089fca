package org.underlee.ifc.shape;

import org.underlee.geom.Mesh;
import org.underlee.step.StepInstance;

/** Makes the mesh of one kind of representation item, in file units and local coordinates. */
@FunctionalInterface
interface ItemReader {
  /**
   * Reads one item.
   *
   * @throws org.underlee.finding.InputException when the item cannot be read, saying why
   */
  Mesh read(StepInstance item);
}
