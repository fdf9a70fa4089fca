package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.underlee.clash.Clash;
import org.underlee.clash.Issue;
import org.underlee.clash.IssueRegister;
import org.underlee.clash.Theirs;
import org.underlee.clash.Tracked;
import org.underlee.clash.WayOut;
import org.underlee.geom.Vec3;
import org.underlee.run.Coordination;
import org.underlee.run.Source;

/** Writes issues as JSON: into a check's report, and the file in which they are followed. */
public final class ClashJson {
  private ClashJson() {}

  static void write(ObjectNode root, Coordination coordination) {
    ArrayNode services = root.putArray("services");
    for (Source source : coordination.checked().survey().services()) {
      Json.source(services.addObject(), source);
    }
    ObjectNode node = root.putObject("clashes");
    node.put("things", coordination.things().size());
    node.put("pairs", coordination.found().pairs());
    node.put("examined", coordination.found().examined());
    node.put("inTheWay", coordination.found().clashes().size());
    node.put("solvedByLayout", coordination.found().solved());
    ArrayNode issues = node.putArray("issues");
    coordination.issues().forEach(t -> issue(issues.addObject(), t));
  }

  private static void issue(ObjectNode node, Tracked t) {
    node.put("id", t.id());
    node.put("cause", t.cause().word());
    node.put("status", t.status().word());
    node.put("title", t.title());
    t.reason().ifPresent(r -> node.put("accepted", r));
    t.issue().ifPresent(i -> found(node, i));
    ArrayNode ways = node.putArray("waysOut");
    for (WayOut way : t.ways()) {
      ObjectNode one = ways.addObject();
      one.put("what", way.what().toString()).put("price", way.price().toString());
      ArrayNode options = one.putArray("options");
      way.options().forEach(o -> options.addObject().put("name", o.name()).put("value", o.value()));
    }
  }

  private static void found(ObjectNode node, Issue issue) {
    ArrayNode things = node.putArray("things");
    for (Theirs thing : issue.things()) {
      ObjectNode one = things.addObject();
      thing.element().file().ifPresent(f -> one.put("file", f));
      one.put("instance", thing.element().instance())
          .put("globalId", thing.element().globalId())
          .put("ifcClass", thing.element().ifcClass())
          .put("kind", thing.kind().id())
          .put("source", thing.kind().source());
    }
    ArrayNode pairs = node.putArray("pairs");
    for (Clash clash : issue.clashes()) {
      ObjectNode one = pairs.addObject();
      one.put("part", clash.part().id())
          .put("thing", clash.thing().element().globalId())
          .put("amountMm", Json.mm(clash.amount()))
          .put("limitMm", Json.mm(clash.limit()))
          .put("measured", clash.measured());
      ArrayNode at = one.putArray("atMm");
      Vec3 p = clash.at();
      at.add(Json.mm(p.x())).add(Json.mm(p.y())).add(Json.mm(p.z()));
    }
  }

  /** The file of issues. */
  public static String write(IssueRegister register) {
    ObjectNode root = Json.object();
    root.put("schema", register.schema());
    root.put("showAcceptedCount", register.showAcceptedCount());
    ArrayNode issues = root.putArray("issues");
    for (IssueRegister.Entry e : register.issues()) {
      issues
          .addObject()
          .put("id", e.id())
          .put("cause", e.cause())
          .put("title", e.title())
          .put("status", e.status())
          .put("accepted", e.accepted())
          .put("by", e.by());
    }
    return Json.text(root);
  }
}
