package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.picture.DeckPlan;
import org.underlee.picture.PlanDrawing;
import org.underlee.report.packet.Block.Column;

/** The framing from above with the names of the bays, and what lies in each. */
record FramingSheet(Job job) {
  private static final double PLAN_SHARE = 0.8;

  Sheet sheet() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(job.say("plan.how"), Block.Tone.PLAIN));
    job.bothWays().ifPresent(w -> blocks.add(new Block.Text(w, Block.Tone.PLAIN)));
    plan()
        .ifPresent(
            p -> blocks.add(new Block.Drawing("plan", job.say("plan.caption"), p, PLAN_SHARE)));
    blocks.add(bays());
    return new Sheet("plan", job.say("plan.title"), true, blocks);
  }

  Optional<PlanDrawing> plan() {
    List<FieldBays> served = job.places().stream().map(Job.Place::bays).toList();
    return DeckPlan.of(
        served, Optional.of(job.design().layout()), job.writing().units(), job.say("plan.title"));
  }

  private Block bays() {
    List<List<String>> rows = new ArrayList<>();
    for (Job.Place place : job.places()) {
      for (Bay bay : place.bays().bays()) {
        String high = job.length(bay.clearWidthHigh());
        String low = job.length(bay.clearWidthLow());
        rows.add(
            List.of(
                place.label(bay),
                bay.left().id() + "–" + bay.right().id(),
                high,
                low,
                job.length(bay.length()),
                inBay(place, bay)));
      }
    }
    return new Block.Table(
        List.of(
            Column.text(job.say("col.bay")),
            Column.text(job.say("col.joists")),
            Column.number(job.say("col.widthHigh")),
            Column.number(job.say("col.widthLow")),
            Column.number(job.say("col.bayLength")),
            Column.text(job.say("col.inIt"))),
        rows);
  }

  String inBay(Job.Place place, Bay bay) {
    List<String> found = new ArrayList<>();
    bay.blocking().forEach(b -> found.add(job.say("bay.blocking", job.length(b.at()))));
    bay.bridging().forEach(b -> found.add(job.say("bay.bridging", job.length(b.at()))));
    bay.crossings()
        .forEach(
            c ->
                found.add(
                    job.say(
                        "bay.crossing." + c.way().word(),
                        job.length(c.size()),
                        job.length(c.at()))));
    if (!place.served().contains(bay)) {
      found.add(job.say("bay.open"));
    }
    return String.join("; ", found);
  }
}
