package org.underlee.ifc.shape;

import org.underlee.finding.InputException;
import org.underlee.step.StepInstance;

/** Errors about shapes: each names the instance, its entity and the reason. */
public final class Unreadable {
  private Unreadable() {}

  /** An entity, or a use of it, that this program does not read. */
  public static InputException unsupported(StepInstance instance, String where) {
    return new InputException(
        instance.place(),
        instance.keyword() + " is not read" + where,
        "Export the body as extrusions, as a faceted B-rep or as a tessellation.");
  }

  /** A shape that is none, such as an extrusion of no depth. */
  static InputException degenerate(StepInstance instance, String what) {
    return new InputException(
        instance.place(),
        instance.keyword() + ": " + what,
        "Correct this shape in the program that made the model.");
  }
}
