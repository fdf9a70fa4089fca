package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;
import static org.underlee.report.packet.Block.Tone.STRONG;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.underlee.report.packet.Block.Column;
import org.underlee.report.packet.SeatMarks.Mark;
import org.underlee.report.packet.SeatMarks.Point;
import org.underlee.report.packet.SeatMarks.Row;
import org.underlee.units.Lengths;

/** Where to mark the seat of each rail on its joist, and how to check it with a string. */
record MarkSheet(Job job) {
  /** What a taut string tells by eye. */
  private static final double STRING_METRIC = 0.002;

  private static final double STRING_IMPERIAL = Lengths.INCH / 16;

  /** Marks that begin at the same station to this are on one string. */
  private static final double SAME_STATION = 0.001;

  Sheet sheet() {
    List<Block> blocks = new ArrayList<>();
    String family = job.kit().family().word();
    blocks.add(new Block.Text(job.say("marks.what." + family), PLAIN));
    blocks.add(new Block.Text(job.say("marks.how"), PLAIN));
    job.bothWays().ifPresent(w -> blocks.add(new Block.Text(w, PLAIN)));
    for (Job.Place place : job.places()) {
      List<Row> rows = SeatMarks.of(place);
      if (!rows.isEmpty()) {
        blocks.add(new Block.Heading(job.say("marks.field", place.mark(), place.layout().field())));
        blocks.addAll(alike(rows));
        blocks.add(table(rows));
        blocks.addAll(string(rows));
      }
    }
    return new Sheet("marks", job.say("marks.title"), true, blocks);
  }

  /** When all are marked alike it is said in one line, for the one who holds the pencil. */
  private List<Block> alike(List<Row> rows) {
    Set<String> pairs =
        rows.stream()
            .map(r -> job.height(r.first().height()) + "|" + job.height(r.last().height()))
            .collect(Collectors.toSet());
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
    boolean level = rows.stream().anyMatch(r -> r.beam().height().isPresent());
    boolean top = rows.stream().anyMatch(r -> r.beam().isTop());
    String datum = job.say(top ? "col.overTop" : "col.overUnderside");
    List<Column> columns = new ArrayList<>();
    columns.add(Column.text(job.say("col.joist")));
    columns.add(Column.text(job.say("col.faceIn")));
    columns.add(Column.text(job.say("col.setToIt")));
    columns.add(Column.text(job.say("col.highMark")));
    columns.add(Column.number(job.say("col.fromHouse")));
    columns.add(Column.number(job.say("col.fromBeam")));
    columns.add(Column.text(job.say("col.lowMark")));
    columns.add(Column.number(job.say("col.fromHouse")));
    columns.add(Column.number(job.say("col.fromBeam")));
    if (level) {
      columns.add(Column.text(job.say("col.highMark") + ", " + datum));
      columns.add(Column.text(job.say("col.lowMark") + ", " + datum));
    }
    boolean between = rows.stream().anyMatch(r -> !r.between().isEmpty());
    if (between) {
      columns.add(Column.text(job.say("col.between")));
    }
    return new Block.Table(columns, rows.stream().map(r -> row(r, level, between)).toList());
  }

  private List<String> row(Row row, boolean level, boolean between) {
    List<String> cells = new ArrayList<>();
    cells.add(row.line().id());
    cells.add(row.bay().map(b -> b.id()).orElse("–"));
    cells.add(row.parts().stream().map(p -> p.label()).collect(Collectors.joining(" ")));
    for (Mark mark : List.of(row.first(), row.last())) {
      cells.add(job.height(mark.height()));
      cells.add(job.length(mark.fromHouse()));
      cells.add(job.length(mark.fromBeam()));
    }
    if (level) {
      boolean known = row.beam().height().isPresent();
      cells.add(known ? job.level(row.first().overBeam()) : "–");
      cells.add(known ? job.level(row.last().overBeam()) : "–");
    }
    if (between) {
      cells.add(between(row.between()));
    }
    return cells;
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
              job.height(to.height()),
              job.length(mark.fromBeam()),
              job.length(to.fromBeam())));
    }
    return String.join("; ", said);
  }

  private List<Block> string(List<Row> rows) {
    String by = job.length(job.writing().isMetric() ? STRING_METRIC : STRING_IMPERIAL);
    Row first = rows.get(0);
    double drop = first.first().at().z() - first.last().at().z();
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Heading(job.say("marks.string")));
    across(rows, Row::first)
        .ifPresent(s -> blocks.add(new Block.Text(job.say("marks.string.high", s, by), PLAIN)));
    across(rows, Row::last)
        .ifPresent(s -> blocks.add(new Block.Text(job.say("marks.string.low", s, by), PLAIN)));
    blocks.add(new Block.Text(job.say("marks.string.along", job.length(drop), by), PLAIN));
    return blocks;
  }

  /**
   * From which joist to which a string lies over marks at one station; told where it leaves out
   * some.
   */
  private Optional<String> across(List<Row> rows, Function<Row, Mark> end) {
    double station = end.apply(rows.get(0)).at().y();
    List<Row> on =
        rows.stream()
            .filter(r -> Math.abs(end.apply(r).at().y() - station) < SAME_STATION)
            .toList();
    String from = on.get(0).line().id();
    String to = on.get(on.size() - 1).line().id();
    if (from.equals(to)) {
      return Optional.empty();
    }
    String stretch = job.say("marks.string.stretch", from, to);
    String others =
        rows.stream()
            .filter(r -> !on.contains(r))
            .map(r -> r.line().id())
            .distinct()
            .collect(Collectors.joining(", "));
    return Optional.of(
        others.isEmpty() ? stretch : stretch + job.say("marks.string.without", others));
  }
}
