package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.underlee.bay.Bay;
import org.underlee.picture.DeckOverview;
import org.underlee.picture.DeckPlan;
import org.underlee.picture.ScaledDrawing;
import org.underlee.report.packet.Block.Column;

/** The framing from above with the names of the bays, and what lies in each. */
record FramingSheet(Job job) {
  private static final double PLAN_SHARE = 0.8;

  Sheet sheet() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(job.say("plan.how"), Block.Tone.PLAIN));
    job.bothWays().ifPresent(w -> blocks.add(new Block.Text(w, Block.Tone.PLAIN)));
    List<Job.Place> places = job.places();
    if (places.size() > 1) {
      blocks.add(overview(places));
    }
    for (Job.Place place : places) {
      if (places.size() > 1) {
        blocks.add(new Block.Heading(job.say("marks.field", place.mark(), place.layout().field())));
      }
      blocks.add(plan(place));
      blocks.add(bays(place));
    }
    return new Sheet("plan", job.say("plan.title"), true, blocks);
  }

  /** Names the drawing that a field's bays are in. */
  String planOf(Job.Place place) {
    boolean only = job.places().size() == 1;
    return only ? "plan" : "plan-" + place.mark().toLowerCase(Locale.ROOT);
  }

  private Block overview(List<Job.Place> places) {
    ScaledDrawing drawing =
        DeckOverview.of(
            places.stream().map(Job.Place::bays).toList(),
            job.design().layout(),
            job.writing().units(),
            job.say("plan.title"));
    return new Block.Drawing("plan", job.say("plan.overview"), drawing, PLAN_SHARE);
  }

  private Block plan(Job.Place place) {
    ScaledDrawing drawing =
        DeckPlan.of(
                List.of(place.bays()),
                Optional.of(job.design().layout()),
                job.writing().units(),
                job.say("plan.title"))
            .orElseThrow();
    return new Block.Drawing(planOf(place), job.say("plan.caption"), drawing, PLAN_SHARE);
  }

  private Block bays(Job.Place place) {
    List<List<String>> rows = new ArrayList<>();
    for (Bay bay : place.bays().bays()) {
      rows.add(
          List.of(
              place.label(bay),
              bay.left().id() + "–" + bay.right().id(),
              job.length(bay.clearWidthHigh()),
              job.length(bay.clearWidthLow()),
              job.length(bay.length()),
              inBay(place, bay)));
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
