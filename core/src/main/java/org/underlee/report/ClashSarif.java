package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.underlee.clash.Cause;
import org.underlee.clash.Clash;
import org.underlee.clash.Tracked;
import org.underlee.clash.WayOut;
import org.underlee.framing.BuildingElement;
import org.underlee.run.Coordination;
import org.underlee.run.Coordination.Region;
import org.underlee.run.Version;

/**
 * Writes issues as SARIF 2.1.0 (OASIS, 2020) for build servers: a result for each issue, with the
 * bytes in the models where its things and its parts are written, and its baseline state.
 */
public final class ClashSarif {
  private static final String SCHEMA =
      "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

  /** Related parts that are told: a viewer shows no more. */
  private static final int MOST_PARTS = 50;

  private ClashSarif() {}

  public static String write(Coordination coordination) {
    ObjectNode root = Json.object();
    root.put("$schema", SCHEMA).put("version", "2.1.0");
    ObjectNode run = root.putArray("runs").addObject();
    ObjectNode driver = run.putObject("tool").putObject("driver");
    driver.put("name", "Underlee").put("semanticVersion", Version.number());
    ArrayNode rules = driver.putArray("rules");
    for (Cause cause : Cause.values()) {
      ObjectNode rule = rules.addObject();
      rule.put("id", cause.word());
      rule.putObject("shortDescription")
          .put("text", "A part of the assembly " + cause.verb() + " another thing.");
    }
    run.put("columnKind", "utf16CodeUnits");
    ArrayNode results = run.putArray("results");
    coordination.issues().forEach(t -> result(results.addObject(), t, coordination));
    return Json.text(root);
  }

  private static void result(ObjectNode node, Tracked t, Coordination all) {
    node.put("ruleId", t.cause().word());
    node.put(
        "level", t.cause() == Cause.TOO_NEAR || t.cause() == Cause.HIDDEN ? "warning" : "error");
    node.putObject("message").put("text", message(t));
    node.put("guid", t.id());
    node.put("baselineState", baseline(t));
    node.putObject("partialFingerprints").put("underleeIssue/v1", t.id());
    ArrayNode locations = node.putArray("locations");
    t.issue()
        .ifPresent(
            i -> {
              i.things().forEach(x -> location(locations, x.element(), all, x.words()));
              parts(node.putArray("relatedLocations"), i.clashes(), all);
            });
    t.reason()
        .ifPresent(
            r ->
                node.putArray("suppressions")
                    .addObject()
                    .put("kind", "external")
                    .put("status", "accepted")
                    .put("justification", r));
  }

  private static String message(Tracked t) {
    StringBuilder text = new StringBuilder(t.title());
    for (WayOut way : t.ways()) {
      text.append("\nWay out: ").append(way.words());
    }
    return text.toString();
  }

  private static String baseline(Tracked t) {
    return switch (t.status()) {
      case NEW -> "new";
      case OPEN, ACCEPTED -> "unchanged";
      case GONE -> "absent";
    };
  }

  private static void parts(ArrayNode related, Iterable<Clash> clashes, Coordination all) {
    int id = 0;
    for (Clash clash : clashes) {
      Optional<BuildingElement> part = clash.part().element();
      if (id < MOST_PARTS && part.isPresent() && all.region(part.get()).isPresent()) {
        location(related, part.get(), all, clash.part().id());
        ((ObjectNode) related.get(related.size() - 1)).put("id", id++);
      }
    }
  }

  private static void location(
      ArrayNode into, BuildingElement element, Coordination all, String words) {
    all.region(element)
        .ifPresent(
            region -> {
              ObjectNode node = into.addObject();
              physical(node.putObject("physicalLocation"), region);
              node.putObject("message").put("text", words);
              node.putArray("logicalLocations")
                  .addObject()
                  .put("name", element.globalId())
                  .put("kind", element.ifcClass());
            });
  }

  private static void physical(ObjectNode node, Region region) {
    node.putObject("artifactLocation").put("uri", uri(region.file()));
    node.putObject("region").put("byteOffset", region.offset()).put("byteLength", region.length());
  }

  /** A file name as a relative URI reference (RFC 3986): all but plain characters in percent. */
  private static String uri(String name) {
    StringBuilder uri = new StringBuilder();
    for (byte b : name.getBytes(StandardCharsets.UTF_8)) {
      char c = (char) (b & 0xFF);
      boolean plain =
          (c >= 'a' && c <= 'z')
              || (c >= 'A' && c <= 'Z')
              || (c >= '0' && c <= '9')
              || "-._~".indexOf(c) >= 0;
      uri.append(
          plain ? String.valueOf(c) : String.format(java.util.Locale.ROOT, "%%%02X", (int) c));
    }
    return uri.toString();
  }
}
