package org.underlee.ifc;

import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.step.StepFile;

/** The editions of IFC that are read; corrections and addenda of one edition are one here. */
public enum IfcSchema {
  IFC2X3,
  IFC4,
  IFC4X3;

  static IfcSchema of(StepFile step) {
    String name = step.schema();
    if (name.startsWith("IFC4X3")) {
      return IFC4X3;
    }
    if (name.startsWith("IFC4")) {
      return IFC4;
    }
    if (name.startsWith("IFC2X3")) {
      return IFC2X3;
    }
    throw new InputException(
        Place.NOWHERE.inFile(step.name()),
        "the schema " + (name.isEmpty() ? "is not named" : name + " is not read"),
        "Export the model as IFC4 (IFC2X3, IFC4 and IFC4X3 are read).");
  }
}
