package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import org.underlee.check.SiteQuestion;
import org.underlee.layout.Cut;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.run.Coordination;
import org.underlee.run.Design;

/** Writes a design as JSON, {@code underlee/design/1}. */
public final class DesignJson {
  private static final int FALL_DECIMALS = 9;

  private DesignJson() {}

  public static String write(Design design) {
    return write(design, Optional.empty());
  }

  /** With what is in the assembly's way, where that was looked at. */
  public static String write(Design design, Optional<Coordination> coordination) {
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
    coordination.ifPresent(c -> ClashJson.write(root, c));
    Json.notMeasured(root, design.survey().framing().notMeasured());
    Json.findings(root, design.findings());
    ArrayNode checklist = root.putArray("checklist");
    for (SiteQuestion question : design.checks().questions()) {
      checklist
          .addObject()
          .put("question", question.text())
          .put("why", question.why())
          .put("source", question.source());
    }
    return Json.text(root);
  }

  private static void field(ObjectNode node, FieldLayout field) {
    node.put("id", field.field());
    node.put("deck", field.deck());
    node.put("seatHighMm", Json.mm(field.seatHigh()));
    node.put("fall", Json.rounded(field.fall(), FALL_DECIMALS));
    node.put("runMm", Json.mm(field.run()));
    node.put("lowEnd", field.lowEnd());
    node.put("binding", field.binding().toString());
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
      part.sheetLength().ifPresent(l -> node.put("sheetLengthMm", Json.mm(l)));
      part.sheetWidth().ifPresent(w -> node.put("sheetWidthMm", Json.mm(w)));
    }
    if (!part.cuts().isEmpty()) {
      ArrayNode cuts = node.putArray("cuts");
      part.cuts().forEach(c -> cut(cuts.addObject(), c));
    }
    part.fall().ifPresent(f -> node.put("fall", Json.rounded(f, FALL_DECIMALS)));
    node.put("why", part.why().reason().toString());
  }

  private static void cut(ObjectNode node, Cut cut) {
    if (cut instanceof Cut.Notch notch) {
      node.put("kind", "notch");
      node.put("fromMm", Json.mm(notch.from()));
      node.put("lengthMm", Json.mm(notch.length()));
      node.put("depthMm", Json.mm(notch.depth()));
    } else if (cut instanceof Cut.Hole hole) {
      node.put("kind", hole.round() ? "round-hole" : "hole");
      node.put("alongMm", Json.mm(hole.along()));
      node.put("acrossMm", Json.mm(hole.across()));
      node.put("lengthMm", Json.mm(hole.length()));
      node.put("widthMm", Json.mm(hole.width()));
    } else if (cut instanceof Cut.Slit slit) {
      node.put("kind", "slit");
      node.put("fromMm", Json.mm(slit.from()));
      node.put("toMm", Json.mm(slit.to()));
      node.put("acrossMm", Json.mm(slit.across()));
    }
  }
}
