package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.underlee.framing.BuildingElement;
import org.underlee.layout.Derivation;
import org.underlee.layout.Derivation.KitValue;
import org.underlee.layout.Derivation.Measured;
import org.underlee.layout.Derivation.Ruled;
import org.underlee.layout.Derivation.Step;
import org.underlee.layout.Part;
import org.underlee.run.Source;

/** Writes where the numbers of parts come from as JSON, {@code underlee/explain/1}. */
public final class ExplainJson {
  private ExplainJson() {}

  public static String write(Source source, List<Part> parts) {
    ObjectNode root = Json.report("explain", source);
    ArrayNode array = root.putArray("parts");
    parts.forEach(p -> part(array.addObject(), p));
    return Json.text(root);
  }

  private static void part(ObjectNode node, Part part) {
    node.put("id", part.id());
    node.put("label", part.label());
    node.put("kind", part.kind().word());
    node.put("reason", part.why().reason().toString());
    ArrayNode dimensions = node.putArray("dimensions");
    part.why().derivations().forEach(d -> derivation(dimensions.addObject(), d));
  }

  private static void derivation(ObjectNode node, Derivation d) {
    node.put("dimension", d.dimension().word());
    node.put("ordinal", d.ordinal());
    node.put("value", Json.number(d.result()));
    node.put("unit", d.dimension().kind().fileUnit());
    ArrayNode steps = node.putArray("steps");
    d.steps().forEach(s -> step(steps.addObject(), s));
  }

  private static void step(ObjectNode node, Step step) {
    node.put("step", step.op().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
    node.put("value", Json.number(step.value()));
    node.put("unit", step.value().kind().fileUnit());
    node.put("what", step.what().toString());
    if (step.origin() instanceof Measured measured) {
      ArrayNode elements = node.putArray("measuredOn");
      measured.elements().stream().distinct().forEach(e -> element(elements.addObject(), e));
    } else if (step.origin() instanceof KitValue kit) {
      node.put("kitValue", kit.key()).put("source", kit.source());
    } else if (step.origin() instanceof Ruled ruled) {
      node.put("source", ruled.source().toString());
    }
  }

  private static void element(ObjectNode node, BuildingElement e) {
    node.put("ifcClass", e.ifcClass());
    node.put("name", e.name());
    node.put("globalId", e.isAssumed() ? null : e.globalId());
    if (!e.isAssumed()) {
      node.put("instance", e.instance());
    }
  }
}
