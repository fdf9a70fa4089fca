package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.underlee.ids.IdsReport;
import org.underlee.run.IdsChecked;

/** Writes what a check by an IDS file found as JSON, {@code underlee/ids-check/1}. */
public final class IdsJson {
  private IdsJson() {}

  public static String write(IdsChecked checked) {
    ObjectNode root =
        Json.report("ids-check", checked.file(), checked.sha256(), checked.ifcSchema());
    root.put("passed", checked.report().passed());
    ArrayNode all = root.putArray("specifications");
    for (IdsReport.Outcome o : checked.report().outcomes()) {
      all.addObject()
          .put("name", o.name())
          .put("status", IdsText.word(o.status()))
          .put("applicable", o.applicable())
          .put("failed", o.failed());
    }
    Json.findings(root, checked.report().findings());
    return Json.text(root);
  }
}
