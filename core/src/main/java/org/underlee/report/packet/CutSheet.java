package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.underlee.kit.StockItem;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.report.packet.Block.Column;
import org.underlee.takeoff.Takeoff;
import org.underlee.units.Lengths;

/** What to cut: each size with the labels of its pieces, and the head rails bay by bay. */
record CutSheet(Job job) {
  private static final double SAME = 1e-6;

  Sheet sheet() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(job.say("cuts.how"), PLAIN));
    for (StockItem item : job.kit().stock()) {
      List<Takeoff.Cut> cuts =
          job.design().takeoff().cuts().stream().filter(c -> c.item().equals(item.id())).toList();
      if (!cuts.isEmpty()) {
        blocks.add(new Block.Heading(job.name(item)));
        blocks.add(table(cuts));
      }
    }
    blocks.addAll(headRails());
    blocks.addAll(bends());
    return new Sheet("cuts", job.say("cuts.title"), false, blocks);
  }

  private List<Block> headRails() {
    List<List<String>> rows = new ArrayList<>();
    for (Job.Place place : job.places()) {
      for (Part part : place.parts(PartKind.HEAD_RAIL)) {
        rows.add(
            List.of(
                place.mark() + "-" + part.bay().orElse(""), part.label(), job.cut(part.length())));
      }
    }
    return rows.isEmpty()
        ? List.of()
        : List.of(
            new Block.Heading(job.say("heads.title")),
            new Block.Text(job.say("heads.how"), PLAIN),
            new Block.Table(
                List.of(
                    Column.text(job.say("col.bay")),
                    Column.text(job.say("col.label")),
                    Column.number(job.say("col.length"))),
                rows));
  }

  private Block table(List<Takeoff.Cut> cuts) {
    boolean folded = cuts.stream().anyMatch(c -> c.sheetWidth().isPresent());
    List<Column> columns = new ArrayList<>();
    columns.add(Column.number(job.say("col.count")));
    columns.add(Column.text(job.say("col.part")));
    columns.add(Column.number(job.say(folded ? "col.flatLength" : "col.length")));
    if (folded) {
      columns.add(Column.number(job.say("col.flatWidth")));
    }
    columns.add(Column.text(job.say("col.labels")));
    return new Block.Table(columns, cuts.stream().map(c -> row(c, folded)).toList());
  }

  private List<String> row(Takeoff.Cut cut, boolean folded) {
    List<String> row = new ArrayList<>();
    row.add(Integer.toString(cut.count()));
    row.add(job.word(cut.kind()));
    row.add(job.cut(cut.length()));
    if (folded) {
      row.add(cut.sheetWidth().isPresent() ? job.cut(cut.sheetWidth().getAsDouble()) : "");
    }
    row.add(pieces(cut).stream().map(Part::label).collect(Collectors.joining(" ")));
    return row;
  }

  /** The parts that are cut to this size. */
  private List<Part> pieces(Takeoff.Cut cut) {
    return job.design().layout().parts().stream()
        .filter(
            p ->
                p.item().equals(cut.item())
                    && p.kind() == cut.kind()
                    && isCutTo(p.cutLength(), cut.length())
                    && sameWidth(p.sheetWidth(), cut.sheetWidth()))
        .toList();
  }

  /** Whether a length, rounded down as the takeoff does, is this one. */
  static boolean isCutTo(double length, double cut) {
    return Math.abs(Lengths.toCut(length) - cut) < SAME;
  }

  private static boolean sameWidth(OptionalDouble part, OptionalDouble cut) {
    return part.isEmpty()
        ? cut.isEmpty()
        : cut.isPresent() && isCutTo(part.getAsDouble(), cut.getAsDouble());
  }

  /** Pieces that are folded have another length when they lie in their place. */
  private List<Block> bends() {
    List<Part> folded =
        job.design().layout().parts().stream()
            .filter(p -> p.sheetLength().isPresent())
            .sorted(Comparator.comparing(Part::kind))
            .toList();
    if (folded.isEmpty()) {
      return List.of();
    }
    return List.of(
        new Block.Heading(job.say("cuts.folds")),
        new Block.Text(job.say("cuts.folds.how"), PLAIN),
        new Block.Table(
            List.of(
                Column.text(job.say("col.label")),
                Column.text(job.say("col.part")),
                Column.number(job.say("col.flatLength")),
                Column.number(job.say("col.length")),
                Column.number(job.say("col.flatWidth")),
                Column.number(job.say("col.width"))),
            folded.stream().map(this::fold).toList()));
  }

  private List<String> fold(Part p) {
    return List.of(
        p.label(),
        job.word(p.kind()),
        job.cut(p.cutLength()),
        job.cut(p.length()),
        p.sheetWidth().isPresent() ? job.cut(p.sheetWidth().getAsDouble()) : "",
        job.cut(p.width()));
  }
}
