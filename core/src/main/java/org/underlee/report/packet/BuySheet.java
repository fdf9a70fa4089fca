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
import org.underlee.takeoff.Takeoff;

/** What to order, with what of it is used; and the bill of what is in the assembly. */
record BuySheet(Job job) {

  Sheet sheet() {
    List<List<String>> order = new ArrayList<>();
    List<List<String>> bill = new ArrayList<>();
    for (Takeoff.Line line : job.design().takeoff().lines()) {
      StockItem item = job.kit().item(line.item());
      bill.add(
          List.of(
              job.name(item),
              item.isSoldByLength()
                  ? job.length(line.quantity())
                  : job.writing().number(line.quantity(), 0)));
      order.add(
          item.isSoldByLength()
              ? List.of(lengths(line), job.name(item), rest(line))
              : List.of(job.writing().number(line.quantity(), 0), job.name(item), ""));
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
                    Column.text(job.say("col.what")),
                    Column.text(job.say("col.use"))),
                order),
            new Block.Heading(job.say("buy.bill")),
            new Block.Table(
                List.of(Column.text(job.say("col.what")), Column.number(job.say("col.net"))),
                bill)));
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
    double bought = job.design().takeoff().bought(line.item());
    String least =
        Optional.ofNullable(job.design().takeoff().bought().get(line.item()))
            .filter(Takeoff.Bought::isProvenLeast)
            .map(b -> " " + job.say("buy.proven"))
            .orElse("");
    return job.say(
            "buy.used",
            job.length(line.quantity()),
            job.writing().number(100 * (bought - line.quantity()) / bought, 0))
        + least;
  }
}
