package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.underlee.run.batch.ModelResult;

/** Writes what became of each of many models as JSON, {@code underlee/batch/1}. */
public final class BatchJson {
  private BatchJson() {}

  /**
   * Writes the table, failures apart.
   *
   * @param job {@code survey}, {@code design} or {@code check}
   */
  public static String write(String job, List<ModelResult> results) {
    ObjectNode root = Json.object("batch");
    root.put("job", job);
    root.put("done", results.stream().filter(ModelResult::isDone).count());
    root.put("failed", results.stream().filter(r -> !r.isDone()).count());
    ArrayNode models = root.putArray("models");
    results.stream().filter(ModelResult::isDone).forEach(r -> done(models.addObject(), r));
    ArrayNode failed = root.putArray("failures");
    results.stream().filter(r -> !r.isDone()).forEach(r -> failure(failed.addObject(), r));
    return Json.text(root);
  }

  private static void done(ObjectNode node, ModelResult r) {
    ModelResult.Counts c = r.counts();
    node.put("file", r.file())
        .put("sha256", r.sha256())
        .put("decks", c.decks())
        .put("fields", c.fields())
        .put("bays", c.bays())
        .put("parts", c.parts());
    c.dryFraction().ifPresent(d -> node.put("dryFraction", Json.rounded(d, DrainJson.DECIMALS)));
    node.put("notes", c.notes()).put("warnings", c.warnings()).put("errors", c.errors());
  }

  private static void failure(ObjectNode node, ModelResult r) {
    node.put("file", r.file())
        .put("sha256", r.sha256())
        .put("outcome", r.outcome().word())
        .put("why", r.message());
  }
}
