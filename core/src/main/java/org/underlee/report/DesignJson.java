package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.run.Design;

/** Writes a design as JSON, {@code underlee/design/1}. */
public final class DesignJson {
  private static final int FALL_DECIMALS = 9;

  private DesignJson() {}

  public static String write(Design design) {
    ObjectNode root = Json.report("design", design.survey().source());
    root.putObject("kit")
        .put("id", design.layout().kit().id())
        .put("version", design.layout().kit().version());
    ArrayNode fields = root.putArray("fields");
    design.layout().fields().forEach(f -> field(fields.addObject(), f));
    ArrayNode parts = root.putArray("parts");
    for (Part part : design.layout().parts()) {
      part(parts.addObject(), part, design);
    }
    DrainJson.write(root, design.proof());
    Json.notMeasured(root, design.survey().framing().notMeasured());
    Json.findings(root, design.findings());
    return Json.text(root);
  }

  private static void field(ObjectNode node, FieldLayout field) {
    node.put("id", field.field());
    node.put("deck", field.deck());
    node.put("seatHighMm", Json.mm(field.seatHigh()));
    node.put("fall", Json.rounded(field.fall(), FALL_DECIMALS));
    node.put("runMm", Json.mm(field.run()));
    node.put("lowEnd", field.lowEnd());
    node.put("binding", field.binding());
  }

  private static void part(ObjectNode node, Part part, Design design) {
    node.put("id", part.id());
    node.put("label", part.label());
    node.put("kind", part.kind().word());
    node.put("field", part.field());
    part.bay().ifPresent(b -> node.put("bay", b));
    node.put("item", part.item());
    node.put("globalId", design.globalIdOf(part).orElse(null));
    if (part.bodies().isEmpty()) {
      node.put("count", part.count());
    } else {
      node.put("lengthMm", Json.mm(part.length()));
      node.put("widthMm", Json.mm(part.width()));
      part.sheetWidth().ifPresent(w -> node.put("sheetWidthMm", Json.mm(w)));
    }
    part.fall().ifPresent(f -> node.put("fall", Json.rounded(f, FALL_DECIMALS)));
    node.put("why", part.why());
  }
}
