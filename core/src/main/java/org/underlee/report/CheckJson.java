package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.underlee.run.Checked;
import org.underlee.run.WrittenPart;

/** Writes what a check of an assembly found as JSON, {@code underlee/check/1}. */
public final class CheckJson {
  private CheckJson() {}

  public static String write(Checked checked) {
    ObjectNode root = Json.report("check", checked.survey().source());
    ArrayNode parts = root.putArray("parts");
    for (WrittenPart part : checked.parts()) {
      parts
          .addObject()
          .put("id", part.id())
          .put("kind", part.kind().word())
          .put("globalId", part.element().globalId());
    }
    DrainJson.write(root, checked.proof());
    Json.notMeasured(root, checked.survey().framing().notMeasured());
    Json.findings(root, checked.findings());
    return Json.text(root);
  }
}
