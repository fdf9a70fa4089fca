package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.CAUTION;
import static org.underlee.report.packet.Block.Tone.PLAIN;

import java.util.ArrayList;
import java.util.List;
import org.underlee.finding.Finding;
import org.underlee.finding.Level;
import org.underlee.kit.Kit;
import org.underlee.kit.KitNumber;
import org.underlee.kit.StockItem;
import org.underlee.report.packet.Block.Column;
import org.underlee.units.Quantity;

/** Where the numbers come from, what was assumed, what is not known. */
record SourceSheet(Job job) {
  Sheet sheet() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(job.say("sources.how"), PLAIN));
    blocks.add(
        new Block.Facts(
            List.of(
                new Block.Fact(job.say("sources.file"), job.design().survey().source().file()),
                new Block.Fact("SHA-256", split(job.design().survey().source().sha256())),
                new Block.Fact(
                    job.say("sources.schema"), job.design().survey().source().ifcSchema()),
                new Block.Fact(
                    job.say("sources.kit"),
                    job.writing().translated(job.kit().name()) + " " + job.kit().version()))));
    blocks.add(new Block.Heading(job.say("sources.decided")));
    for (Job.Place place : job.places()) {
      blocks.add(
          new Block.Text(
              job.say(
                  "sources.field",
                  place.layout().field(),
                  place.mark(),
                  job.writing().translated(place.field().fallWhy()),
                  job.told(place.layout().binding())),
              PLAIN));
      place
          .field()
          .highLine()
          .ifPresent(
              h ->
                  blocks.add(
                      new Block.Text(
                          job.say("sources.highLine", place.mark(), job.told(h.words())), PLAIN)));
    }
    blocks.add(new Block.Heading(job.say("sources.kitValues")));
    blocks.add(kitValues());
    blocks.add(new Block.Heading(job.say("sources.stock")));
    blocks.add(stock());
    notes(blocks);
    return new Sheet("sources", job.say("sources.title"), false, blocks);
  }

  /** In two halves, since it is too long for a narrow page. */
  private static String split(String hash) {
    return hash.substring(0, hash.length() / 2) + " " + hash.substring(hash.length() / 2);
  }

  private Block kitValues() {
    List<List<String>> rows = new ArrayList<>();
    for (KitNumber value : job.kit().family().numbers()) {
      Kit.Sourced sourced = job.kit().values().get(value);
      if (sourced != null) {
        boolean length = value.key().endsWith("Mm");
        rows.add(
            List.of(
                value.meaning(),
                length ? job.length(sourced.value()) : job.writing().number(sourced.value(), 0),
                sourced.source()));
      }
    }
    return new Block.Table(
        List.of(
            Column.text(job.say("col.what")),
            Column.number(job.say("col.value")),
            Column.text(job.say("col.source"))),
        rows);
  }

  private Block stock() {
    return new Block.Table(
        List.of(
            Column.text(job.say("col.what")),
            Column.number(job.say("col.thickness")),
            Column.text(job.say("col.source"))),
        job.kit().stock().stream().map(this::stock).toList());
  }

  private List<String> stock(StockItem item) {
    return List.of(
        job.name(item),
        item.thickness() > 0
            ? Quantity.length(item.thickness()).exactlyIn(job.writing().units())
            : "",
        item.source());
  }

  private void notes(List<Block> blocks) {
    List<Finding> notes =
        job.design().findings().stream().filter(f -> f.level() == Level.NOTE).toList();
    if (!notes.isEmpty()) {
      blocks.add(new Block.Heading(job.say("sources.notes")));
      notes.forEach(f -> blocks.add(new Block.Text(job.told(f), PLAIN)));
    }
    int unread = job.design().survey().framing().notMeasured().size();
    if (unread > 0) {
      blocks.add(new Block.Text(job.say("sources.notMeasured", unread), CAUTION));
    }
  }
}
