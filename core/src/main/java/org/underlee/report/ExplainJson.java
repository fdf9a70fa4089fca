package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import org.underlee.check.OutletRatings;
import org.underlee.drainage.flow.Capacity;
import org.underlee.drainage.flow.Rating;
import org.underlee.framing.BuildingElement;
import org.underlee.layout.Derivation;
import org.underlee.layout.Derivation.KitValue;
import org.underlee.layout.Derivation.Measured;
import org.underlee.layout.Derivation.Ruled;
import org.underlee.layout.Derivation.Step;
import org.underlee.layout.Part;
import org.underlee.run.Source;
import org.underlee.units.Quantity;

/** Writes where the numbers of parts come from as JSON, {@code underlee/explain/1}. */
public final class ExplainJson {
  private ExplainJson() {}

  /**
   * Of these parts.
   *
   * @param rated what every method says of outlets: told with those that are among the parts
   */
  public static String write(Source source, List<Part> parts, List<OutletRatings> rated) {
    ObjectNode root = Json.report("explain", source);
    ArrayNode array = root.putArray("parts");
    for (Part part : parts) {
      ObjectNode node = array.addObject();
      part(node, part);
      rated.stream().filter(r -> r.outlet().equals(part.id())).forEach(r -> ratings(node, r));
    }
    return Json.text(root);
  }

  private static void ratings(ObjectNode node, OutletRatings outlet) {
    node.put("stretchMm", Json.mm(outlet.stretch()));
    node.put("downspoutSizeMm", Json.mm(outlet.spout().size()));
    node.put("downspoutSizedBy", outlet.spout().sizedBy().name().toLowerCase(Locale.ROOT));
    ArrayNode all = node.putArray("ratings");
    for (Rating.Part part : Rating.Part.values()) {
      outlet.of(part).forEach(r -> rating(all.addObject(), r, outlet.governs(r)));
    }
  }

  private static void rating(ObjectNode node, Rating r, boolean governs) {
    Capacity c = r.capacity();
    node.put("part", r.part().name().toLowerCase(Locale.ROOT));
    node.put("id", c.id()).put("name", c.name()).put("code", c.code()).put("edition", c.edition());
    node.put("mark", c.mark().words()).put("source", c.source());
    node.put("mayDecide", c.accepted()).put("governs", governs);
    node.put("mustCarry", Json.number(Quantity.of(Quantity.Kind.FLOW, r.demand())));
    node.put("carries", Json.number(Quantity.of(Quantity.Kind.FLOW, c.flow())));
    node.put("unit", Quantity.Kind.FLOW.fileUnit());
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
    node.put("step", step.op().name().toLowerCase(Locale.ROOT).replace('_', '-'));
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
