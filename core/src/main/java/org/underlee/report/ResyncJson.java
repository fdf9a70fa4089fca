package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.underlee.run.BayChange;
import org.underlee.run.Resynced;
import org.underlee.units.Lengths.UnitSystem;

/** Writes what changed with a new export as JSON, {@code underlee/resync/1}. */
public final class ResyncJson {
  private ResyncJson() {}

  public static String write(Resynced resynced) {
    ObjectNode root = Json.report("resync", resynced.design().survey().source());
    Json.source(root.putObject("old"), resynced.old());
    ObjectNode counts = root.putObject("counts");
    for (BayChange.Kind kind : BayChange.Kind.values()) {
      counts.put(kind.word(), resynced.count(kind));
    }
    ArrayNode decisions = root.putArray("decisions");
    for (Resynced.Decision d : resynced.decisions()) {
      decisions
          .addObject()
          .put("of", d.of())
          .put("name", d.name())
          .put("value", d.value())
          .put("kept", d.kept())
          .put("why", d.why());
    }
    ArrayNode bays = root.putArray("bays");
    resynced.bays().forEach(b -> bay(bays.addObject(), b));
    Json.notMeasured(root, resynced.design().survey().framing().notMeasured());
    Json.findings(root, resynced.design().findings());
    return Json.text(root);
  }

  private static void bay(ObjectNode node, BayChange change) {
    node.put("field", change.field()).put("bay", change.bay()).put("change", change.kind().word());
    change.matchedBy().ifPresent(m -> node.put("matchedBy", m.word()));
    ArrayNode why = node.putArray("why");
    change.why().forEach(w -> why.add(w.in(UnitSystem.METRIC)));
    node.putObject("parts")
        .put("same", change.parts().same())
        .put("changed", change.parts().changed())
        .put("new", change.parts().added())
        .put("gone", change.parts().gone());
  }
}
