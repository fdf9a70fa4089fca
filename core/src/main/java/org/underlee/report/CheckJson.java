package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import org.underlee.run.Checked;
import org.underlee.run.Coordination;
import org.underlee.run.WrittenPart;

/** Writes what a check of an assembly found as JSON, {@code underlee/check/1}. */
public final class CheckJson {
  private CheckJson() {}

  public static String write(Checked checked) {
    return write(checked, Optional.empty());
  }

  /** With what is in the assembly's way, where that was looked at. */
  public static String write(Checked checked, Optional<Coordination> coordination) {
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
    coordination.ifPresent(c -> ClashJson.write(root, c));
    Json.notMeasured(root, checked.survey().framing().notMeasured());
    Json.findings(root, checked.findings());
    return Json.text(root);
  }
}
