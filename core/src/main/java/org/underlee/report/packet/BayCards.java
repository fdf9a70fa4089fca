package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.geom.Vec2;
import org.underlee.layout.Cut;
import org.underlee.layout.Part;
import org.underlee.picture.PlanPlaces;
import org.underlee.report.packet.Block.Column;
import org.underlee.report.packet.Block.Tick;
import org.underlee.report.packet.SeatMarks.Row;

/** What the one below a bay needs: its marks, its pieces with their cuts, and boxes to tick. */
record BayCards(Job job) {

  List<Packet.BayCard> cards() {
    List<Packet.BayCard> cards = new ArrayList<>();
    for (Job.Place place : job.places()) {
      String plan = new FramingSheet(job).planOf(place);
      Map<PlanPlaces.BayAt, List<Vec2>> outlines = PlanPlaces.outlines(List.of(place.bays()));
      List<Row> rows = SeatMarks.of(place);
      for (Bay bay : place.served()) {
        List<Vec2> outline =
            outlines.getOrDefault(
                new PlanPlaces.BayAt(place.layout().field(), bay.id()), List.of());
        List<Row> own = rows.stream().filter(r -> r.isAt(bay)).toList();
        cards.add(
            new Packet.BayCard(
                place.layout().field() + "/" + bay.id(),
                place.label(bay),
                plan,
                outline,
                blocks(place, bay, own)));
      }
    }
    return cards;
  }

  private List<Block> blocks(Job.Place place, Bay bay, List<Row> rows) {
    String label = place.label(bay);
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Block.Facts(
            List.of(
                new Block.Fact(job.say("col.joists"), bay.left().id() + "–" + bay.right().id()),
                new Block.Fact(job.say("col.widthHigh"), job.length(bay.clearWidthHigh())),
                new Block.Fact(job.say("col.widthLow"), job.length(bay.clearWidthLow())))));
    if (!rows.isEmpty()) {
      blocks.add(new Block.Heading(job.say("marks.title")));
      blocks.add(new MarkSheet(job).table(rows));
    }
    blocks.add(new Block.Heading(job.say("cards.pieces")));
    blocks.add(pieces(place, bay));
    blocks.add(
        new Block.Ticks(
            Stream.of("marked", "carried", "caught", "tested")
                .map(t -> new Tick(label + "-" + t, job.say(tick(t)), ""))
                .toList()));
    return blocks;
  }

  /** Marks and the test are the same for every family. */
  private String tick(String what) {
    boolean own = what.equals("carried") || what.equals("caught");
    return "cards." + (own ? job.kit().family().word() + "." : "") + what;
  }

  private Block pieces(Job.Place place, Bay bay) {
    return new Block.Table(
        List.of(
            Column.text(job.say("col.label")),
            Column.text(job.say("col.part")),
            Column.number(job.say("col.length")),
            Column.number(job.say("col.flatWidth")),
            Column.text(job.say("col.cuts"))),
        Stream.concat(place.partsIn(bay).stream(), place.partsBelow(bay).stream())
            .map(this::piece)
            .toList());
  }

  private List<String> piece(Part part) {
    boolean counted = part.bodies().isEmpty();
    return List.of(
        part.label(),
        job.word(part.kind()),
        counted ? part.count() + "" : job.cut(part.cutLength()),
        part.sheetWidth().isPresent() ? job.cut(part.sheetWidth().getAsDouble()) : "",
        part.cuts().stream().map(this::cut).collect(java.util.stream.Collectors.joining("; ")));
  }

  private String cut(Cut cut) {
    if (cut instanceof Cut.Notch n) {
      return job.say(
          "cut.notch",
          job.length(n.from()),
          job.length(n.from() + n.length()),
          job.length(n.depth()));
    }
    if (cut instanceof Cut.Hole h) {
      return job.say(
          "cut.hole", job.length(h.width()), job.length(h.along()), job.length(h.across()));
    }
    Cut.Slit s = (Cut.Slit) cut;
    return job.say("cut.slit", job.length(s.from()), job.length(s.to()));
  }
}
