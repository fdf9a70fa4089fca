package org.underlee.run;

import org.underlee.ifc.IfcModel;
import org.underlee.step.StepFile;

/**
 * The file that a run reads.
 *
 * @param file its name, without folders
 * @param sha256 of the bytes as given, lower-case hexadecimal
 * @param ifcSchema {@code IFC4}
 * @param lengthUnit {@code FOOT}
 */
public record Source(String file, String sha256, String ifcSchema, String lengthUnit) {
  static Source of(StepFile given, String sha256, IfcModel model) {
    return new Source(given.name(), sha256, model.schema().name(), model.units().lengthName());
  }
}
