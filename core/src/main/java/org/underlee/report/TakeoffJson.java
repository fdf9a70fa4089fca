package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.TreeMap;
import org.underlee.run.Design;
import org.underlee.takeoff.Takeoff;

/** Writes a takeoff as JSON, {@code underlee/takeoff/1}. */
public final class TakeoffJson {
  private static final int QUANTITY_DECIMALS = 4;

  private TakeoffJson() {}

  public static String write(Design design) {
    ObjectNode root = Json.report("takeoff", design.survey().source());
    Takeoff takeoff = design.takeoff();
    ArrayNode lines = root.putArray("lines");
    takeoff.lines().forEach(l -> line(lines.addObject(), l));
    ArrayNode cuts = root.putArray("cuts");
    takeoff.cuts().forEach(c -> cut(cuts.addObject(), c));
    ArrayNode stock = root.putArray("stock");
    takeoff.stock().forEach(s -> stock(stock.addObject(), s));
    ObjectNode bought = root.putObject("bought");
    new TreeMap<>(takeoff.bought()).forEach((item, b) -> bought(bought.putObject(item), b));
    Json.notMeasured(root, design.survey().framing().notMeasured());
    Json.findings(root, design.findings());
    return Json.text(root);
  }

  private static void line(ObjectNode node, Takeoff.Line line) {
    node.put("item", line.item());
    node.put("description", line.description());
    node.put("unit", line.unit());
    node.put("quantity", Json.rounded(line.quantity(), QUANTITY_DECIMALS));
    Json.strings(node.putArray("parts"), line.parts());
  }

  private static void cut(ObjectNode node, Takeoff.Cut cut) {
    node.put("item", cut.item());
    node.put("kind", cut.kind().word());
    node.put("lengthMm", Json.mm(cut.length()));
    cut.sheetWidth().ifPresent(w -> node.put("sheetWidthMm", Json.mm(w)));
    node.put("count", cut.count());
    Json.strings(node.putArray("bays"), cut.bays());
  }

  private static void bought(ObjectNode node, Takeoff.Bought bought) {
    node.put("lengthMm", Json.mm(bought.length()));
    node.put("leastMm", Json.mm(bought.least()));
    node.put("provenLeast", bought.isProvenLeast());
  }

  private static void stock(ObjectNode node, Takeoff.Stock stock) {
    node.put("item", stock.item());
    node.put("stockLengthMm", Json.mm(stock.stockLength()));
    node.put("pieces", stock.pieces());
    ArrayNode pattern = node.putArray("pattern");
    stock.pattern().forEach(l -> pattern.add(Json.mm(l)));
    node.put("offcutMm", Json.mm(stock.offcut()));
  }
}
