package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.underlee.run.Design;
import org.underlee.takeoff.Order;
import org.underlee.takeoff.Share;
import org.underlee.takeoff.Stick;
import org.underlee.takeoff.Takeoff;

/** Writes a takeoff as JSON, {@code underlee/takeoff/1}. */
public final class TakeoffJson {
  private static final int QUANTITY_DECIMALS = 4;

  private TakeoffJson() {}

  public static String write(Design design) {
    ObjectNode root = Json.report("takeoff", design.survey().source());
    Takeoff takeoff = design.takeoff();
    ArrayNode lines = root.putArray("lines");
    Map<String, String> ids = design.globalIds();
    takeoff.lines().forEach(l -> line(lines.addObject(), l, takeoff, ids));
    ArrayNode cuts = root.putArray("cuts");
    takeoff.cuts().forEach(c -> cut(cuts.addObject(), c));
    ArrayNode stock = root.putArray("stock");
    takeoff.stock().forEach(s -> stock(stock.addObject(), s));
    ObjectNode bought = root.putObject("bought");
    new TreeMap<>(takeoff.bought()).forEach((item, b) -> bought(bought.putObject(item), b));
    order(root.putObject("order"), takeoff.order());
    ArrayNode shares = root.putArray("shares");
    Share.of(design.layout()).forEach(s -> share(shares.addObject(), s, ids));
    rules(root.putObject("rules"));
    Json.notMeasured(root, design.survey().framing().notMeasured());
    Json.findings(root, design.findings());
    return Json.text(root);
  }

  private static void line(
      ObjectNode node, Takeoff.Line line, Takeoff takeoff, Map<String, String> ids) {
    node.put("item", line.item());
    node.put("description", line.description());
    node.put("unit", line.unit());
    node.put("quantity", Json.rounded(line.quantity(), QUANTITY_DECIMALS));
    Optional.ofNullable(takeoff.lengths().get(line.item())).ifPresent(l -> lengths(node, l));
    Json.strings(node.putArray("parts"), line.parts());
    globalIds(node, line.parts(), ids);
  }

  private static void globalIds(ObjectNode node, List<String> parts, Map<String, String> ids) {
    List<String> known = parts.stream().filter(ids::containsKey).map(ids::get).toList();
    Json.strings(node.putArray("globalIds"), known);
  }

  private static void lengths(ObjectNode node, Takeoff.Lengths l) {
    node.put("netMm", Json.mm(l.net()));
    node.put("foldsMm", Json.mm(l.folds()));
    node.put("lapsMm", Json.mm(l.laps()));
    node.put("grossMm", Json.mm(l.gross()));
    node.put("boughtMm", Json.mm(l.bought()));
    node.put("onHandMm", Json.mm(l.onHand()));
    node.put("besideMm", Json.mm(l.beside()));
    node.put("keptMm", Json.mm(l.kept()));
    node.put("wasteMm", Json.mm(l.waste()));
  }

  private static void order(ObjectNode node, Order order) {
    order.cost().ifPresent(c -> CompareJson.cost(node.putObject("cost"), c));
    ArrayNode rows = node.putArray("rows");
    order.rows().forEach(r -> order(rows.addObject(), r));
    ArrayNode alternatives = node.putArray("alternatives");
    for (Order.Alternative a : order.alternatives()) {
      ObjectNode own = alternatives.addObject();
      own.put("item", a.item());
      own.put("stockLengthMm", Json.mm(a.stockLength()));
      own.put("pieces", a.pieces());
      a.cost().ifPresent(c -> own.put("cost", c));
    }
  }

  private static void order(ObjectNode node, Order.Row r) {
    node.put("item", r.item());
    node.put("unit", r.unit());
    node.put("piecesInUnit", r.perUnit());
    r.stockLength().ifPresent(l -> node.put("stockLengthMm", Json.mm(l)));
    node.put("needed", r.needed());
    node.put("spare", r.spare());
    node.put("spareRule", r.spareRule());
    node.put("units", r.units());
    r.price().ifPresent(p -> node.put("price", p));
    r.cost().ifPresent(c -> node.put("cost", c));
  }

  private static void share(ObjectNode node, Share s, Map<String, String> ids) {
    node.put("level", s.level().word());
    node.put("place", s.place());
    node.put("item", s.item());
    node.put("unit", s.unit());
    node.put("quantity", Json.rounded(s.quantity(), QUANTITY_DECIMALS));
    Json.strings(node.putArray("parts"), s.parts());
    globalIds(node, s.parts(), ids);
  }

  private static void rules(ObjectNode node) {
    TakeoffRules.ALL.forEach(node::put);
  }

  private static void cut(ObjectNode node, Takeoff.Cut cut) {
    node.put("item", cut.item());
    node.put("kind", cut.kind().word());
    node.put("lengthMm", Json.mm(cut.length()));
    cut.sheetWidth().ifPresent(w -> node.put("sheetWidthMm", Json.mm(w)));
    node.put("count", cut.count());
    Json.strings(node.putArray("bays"), cut.bays());
  }

  /** For each cross-cut of the pattern, its pieces. */
  private static void ripped(ArrayNode node, Takeoff.Stock stock) {
    for (Stick.Block block : stock.blocks()) {
      ArrayNode pieces = node.addArray();
      for (Stick.Piece piece : block.pieces()) {
        ObjectNode own = pieces.addObject();
        own.put("lengthMm", Json.mm(piece.length()));
        own.put("widthMm", Json.mm(piece.width()));
      }
    }
  }

  private static void bought(ObjectNode node, Takeoff.Bought bought) {
    node.put("lengthMm", Json.mm(bought.length()));
    if (bought.measure() == Takeoff.Measure.LENGTH) {
      node.put("leastMm", Json.mm(bought.least()));
    } else {
      node.put("cost", Json.rounded(bought.amount(), QUANTITY_DECIMALS));
      node.put("leastCost", Json.rounded(bought.least(), QUANTITY_DECIMALS));
    }
    node.put("provenLeast", bought.isProvenLeast());
  }

  private static void stock(ObjectNode node, Takeoff.Stock stock) {
    node.put("item", stock.item());
    node.put("stockLengthMm", Json.mm(stock.stockLength()));
    node.put("pieces", stock.pieces());
    ArrayNode pattern = node.putArray("pattern");
    stock.pattern().forEach(l -> pattern.add(Json.mm(l)));
    if (stock.isRipped()) {
      ripped(node.putArray("ripped"), stock);
    }
    node.put("offcutMm", Json.mm(stock.offcut()));
    node.put("onHand", stock.onHand());
  }
}
