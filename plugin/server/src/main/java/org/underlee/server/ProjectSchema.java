package org.underlee.server;

import java.util.Locale;
import org.underlee.step.StepFile;

/** Whether the server can take a file: it knows two schemas, and a project has one of them. */
final class ProjectSchema {
  private ProjectSchema() {}

  static void require(StepFile file, Project project) {
    String schema = file.schema().toUpperCase(Locale.ROOT);
    if (schema.startsWith("IFC4X")) {
      throw new ServerException(
          file.name() + " is of schema " + schema + ", which this model server does not know.",
          "Export the model as IFC4 and put that, or keep this one as a file.");
    }
    String wanted = project.schema().equalsIgnoreCase("ifc4") ? "IFC4" : "IFC2X3";
    if (!schema.equals(wanted)) {
      throw new ServerException(
          file.name()
              + " is of schema "
              + schema
              + ", and the project \""
              + project.name()
              + "\" of "
              + wanted
              + ".",
          "Put it into a project of its own schema, or export the model as " + wanted + ".");
    }
  }
}
