package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.underlee.check.DrainSet;
import org.underlee.layout.FieldLayout;
import org.underlee.run.Arrangement;
import org.underlee.run.Comparison;
import org.underlee.takeoff.Order;

/** Writes arrangements as JSON, {@code underlee/compare/1}. */
public final class CompareJson {
  private static final int DECIMALS = 9;

  private CompareJson() {}

  public static String write(Comparison comparison) {
    ObjectNode root = Json.report("compare", comparison.survey().source());
    ArrayNode all = root.putArray("arrangements");
    for (Arrangement a : comparison.arrangements()) {
      arrangement(all.addObject(), all.size(), a);
    }
    Json.notMeasured(root, comparison.survey().framing().notMeasured());
    Json.findings(root, comparison.survey().findings());
    return Json.text(root);
  }

  static void cost(ObjectNode node, Order.Cost cost) {
    node.put("amount", cost.amount());
    node.put("currency", cost.currency());
    node.put("articlesWithoutPrice", cost.unpriced());
  }

  private static void drains(ObjectNode node, DrainSet drains) {
    size(node, drains.own());
    node.put("used", Json.rounded(drains.use(), DECIMALS));
    node.put("by", drains.by());
    node.put("stretchMm", Json.mm(drains.stretch()));
    drains.least().ifPresent(s -> size(node.putObject("least"), s));
  }

  private static void size(ObjectNode node, DrainSet.Size size) {
    node.put("gutterWidthMm", Json.mm(size.width()));
    node.put("gutterDepthMm", Json.mm(size.depth()));
    node.put("downspoutMm", Json.mm(size.downspout()));
    node.put("outlets", size.outlets());
  }

  private static void arrangement(ObjectNode node, int number, Arrangement a) {
    node.put("number", number);
    node.put("kit", a.kit().id());
    node.put("family", a.kit().family().word());
    node.put("lowEnd", a.lowEnd());
    node.put("fall", Json.rounded(a.fall(), DECIMALS));
    node.put("boardsOff", a.boardsOff());
    if (!a.bothWays().isEmpty()) {
      Json.strings(node.putArray("bothWays"), a.bothWays());
    }
    node.put("dryFraction", Json.rounded(a.dryFraction(), DECIMALS));
    a.headroom().ifPresent(h -> node.put("headroomMm", Json.mm(h)));
    node.put("partsCut", a.partsCut());
    node.put("bought", a.bought());
    a.cost().ifPresent(c -> cost(node.putObject("cost"), c));
    a.drains().ifPresent(d -> drains(node.putObject("drains"), d));
    a.dominatedBy().ifPresent(n -> node.put("dominatedBy", n));
    ArrayNode fields = node.putArray("fields");
    for (FieldLayout field : a.fields()) {
      ObjectNode own = fields.addObject();
      own.put("id", field.field());
      own.put("lowEnd", field.lowEnd());
      own.put("seatHighMm", Json.mm(field.seatHigh()));
      own.put("runMm", Json.mm(field.run()));
      own.put("bays", field.bays().size());
      own.put("binding", field.binding().toString());
    }
  }
}
