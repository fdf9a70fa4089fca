package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;
import static org.underlee.report.packet.Block.Tone.STRONG;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.underlee.report.packet.Block.Column;
import org.underlee.report.packet.SeatMarks.Mark;
import org.underlee.report.packet.SeatMarks.Point;
import org.underlee.report.packet.SeatMarks.Row;
import org.underlee.units.Lengths;

/** Where to mark the bearing line of each rail on its joist, and how to check it with a string. */
record MarkSheet(Job job) {
  /** What a taut string tells by eye. */
  private static final double STRING_METRIC = 0.002;

  private static final double STRING_IMPERIAL = Lengths.INCH / 16;

  Sheet sheet() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(job.say("marks.what"), PLAIN));
    blocks.add(new Block.Text(job.say("marks.how"), PLAIN));
    for (Job.Place place : job.places()) {
      List<Row> rows = SeatMarks.of(job, place);
      if (!rows.isEmpty()) {
        blocks.add(new Block.Heading(job.say("marks.field", place.mark(), place.layout().field())));
        blocks.addAll(alike(rows));
        blocks.add(table(rows));
        blocks.addAll(string(place, rows));
      }
    }
    return new Sheet("marks", job.say("marks.title"), false, blocks);
  }

  /** When all are marked alike it is said in one line, for the one who holds the pencil. */
  private List<Block> alike(List<Row> rows) {
    Map<String, Long> pairs =
        rows.stream()
            .collect(
                Collectors.groupingBy(
                    r -> job.height(r.first().height()) + "|" + job.height(r.last().height()),
                    LinkedHashMap::new,
                    Collectors.counting()));
    if (pairs.size() > 1) {
      return List.of();
    }
    return List.of(
        new Block.Text(
            job.say(
                "marks.alike",
                job.height(rows.get(0).first().height()),
                job.height(rows.get(0).last().height())),
            STRONG));
  }

  Block table(List<Row> rows) {
    return new Block.Table(
        List.of(
            Column.text(job.say("col.joist")),
            Column.text(job.say("col.faceIn")),
            Column.text(job.say("col.rail")),
            Column.text(job.say("col.highMark")),
            Column.number(job.say("col.fromHouse")),
            Column.text(job.say("col.lowMark")),
            Column.number(job.say("col.fromBeam")),
            Column.text(job.say("col.between"))),
        rows.stream().map(this::row).toList());
  }

  private List<String> row(Row row) {
    return List.of(
        row.line().id(),
        row.bay().id(),
        row.rails().stream().map(p -> p.label()).collect(Collectors.joining(" ")),
        job.height(row.first().height()),
        job.length(row.first().fromHouse()),
        job.height(row.last().height()),
        job.length(row.last().fromBeam()),
        between(row.between()));
  }

  /** Each place between the ends; a notch as the stretch that it is. */
  private String between(List<Mark> marks) {
    List<String> said = new ArrayList<>();
    for (int i = 0; i < marks.size(); i++) {
      Mark mark = marks.get(i);
      boolean notch =
          mark.point() == Point.NOTCH_FROM
              && i + 1 < marks.size()
              && marks.get(i + 1).point() == Point.NOTCH_TO;
      Mark to = notch ? marks.get(++i) : mark;
      said.add(
          job.say(
              notch ? "mark.notch" : mark.point().key(),
              job.length(mark.fromHouse()),
              job.height(mark.height()),
              job.length(to.fromHouse()),
              job.height(to.height())));
    }
    return String.join("; ", said);
  }

  private List<Block> string(Job.Place place, List<Row> rows) {
    double by = job.writing().isMetric() ? STRING_METRIC : STRING_IMPERIAL;
    Row first = rows.get(0);
    Row last = rows.get(rows.size() - 1);
    double drop = place.layout().fall() * (first.last().fromHouse() - first.first().fromHouse());
    return List.of(
        new Block.Heading(job.say("marks.string")),
        new Block.Text(
            job.say("marks.string.across", first.line().id(), last.line().id(), job.length(by)),
            PLAIN),
        new Block.Text(job.say("marks.string.along", job.length(drop), job.length(by)), PLAIN));
  }
}
