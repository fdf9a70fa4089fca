package org.underlee.report;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.underlee.run.SchemaChecked;

/** Writes what a check by the standard's schema found as JSON, {@code underlee/schema-check/1}. */
public final class SchemaJson {
  private SchemaJson() {}

  public static String write(SchemaChecked checked) {
    ObjectNode root =
        Json.report("schema-check", checked.file(), checked.sha256(), checked.ifcSchema());
    root.put("checkedBy", checked.report().schema())
        .put("onlyOurs", checked.onlyOurs())
        .put("instances", checked.report().instances())
        .put("rulesExecuted", checked.report().executed())
        .put("clean", checked.clean());
    Json.findings(root, checked.report().findings());
    return Json.text(root);
  }
}
