package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.underlee.kit.StockItem;
import org.underlee.report.packet.Block.Column;
import org.underlee.takeoff.Order;
import org.underlee.takeoff.Takeoff;

/** What to order, spares included; and the bill of what is in the assembly. */
record BuySheet(Job job) {

  Sheet sheet() {
    List<List<String>> bill = new ArrayList<>();
    for (Takeoff.Line line : job.design().takeoff().lines()) {
      StockItem item = job.kit().item(line.item());
      bill.add(
          List.of(
              job.name(item),
              item.isSoldByLength()
                  ? job.length(line.quantity())
                  : job.writing().number(line.quantity(), 0),
              item.isSoldByLength() ? lengths(line) : "",
              item.isSoldByLength() ? rest(line) : ""));
    }
    return new Sheet(
        "buy",
        job.say("buy.title"),
        false,
        List.of(
            new Block.Text(job.say("buy.how"), PLAIN),
            new Block.Heading(job.say("buy.order")),
            new Block.Table(
                List.of(
                    Column.number(job.say("col.order")),
                    Column.text(job.say("col.unit")),
                    Column.text(job.say("col.what")),
                    Column.number(job.say("col.spare"))),
                job.design().takeoff().order().rows().stream().map(this::ordered).toList()),
            new Block.Heading(job.say("buy.bill")),
            new Block.Table(
                List.of(
                    Column.text(job.say("col.what")),
                    Column.number(job.say("col.net")),
                    Column.text(job.say("col.cutFrom")),
                    Column.text(job.say("col.use"))),
                bill)));
  }

  /** As {@code takeoff} prints it. */
  private List<String> ordered(Order.Row row) {
    String unit = job.writing().translated(row.unit());
    String pack = row.perUnit() > 1 ? " " + job.say("buy.pack", row.perUnit()) : "";
    String length =
        row.stockLength().isPresent() ? " " + job.length(row.stockLength().getAsDouble()) : "";
    return List.of(
        Integer.toString(row.units()),
        unit + pack + length,
        job.name(job.kit().item(row.item())),
        row.spare() == 0 ? "" : Integer.toString(row.spare()));
  }

  private String lengths(Takeoff.Line line) {
    Map<Double, Integer> lengths = new TreeMap<>();
    job.design().takeoff().stock().stream()
        .filter(s -> s.item().equals(line.item()))
        .forEach(s -> lengths.merge(s.stockLength(), s.pieces(), Integer::sum));
    return lengths.entrySet().stream()
        .map(e -> e.getValue() + "\u00a0×\u00a0" + job.length(e.getKey()))
        .collect(Collectors.joining(" + "));
  }

  private String rest(Takeoff.Line line) {
    String least =
        Optional.ofNullable(job.design().takeoff().bought().get(line.item()))
            .filter(Takeoff.Bought::isProvenLeast)
            .map(b -> " " + job.say("buy.proven"))
            .orElse("");
    double left = 100 * job.design().takeoff().leftOver(line.item());
    return job.say("buy.left", job.writing().number(left, 0)) + least;
  }
}
