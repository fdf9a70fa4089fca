package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.underlee.bay.Bay;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.OutletShare;
import org.underlee.report.packet.Block.Column;
import org.underlee.report.packet.Block.Tick;

/** How much water to pour on each bay at the test, and what to look at. */
record HoseSheet(Job job) {
  /** Poured on each bay at the hose test: so much rain, metres. */
  private static final double TEST_DEPTH = 0.010;

  private static final double MM_PER_METRE = 1000;
  private static final double MINUTES = 60;

  Sheet sheet() {
    String pieces = job.say("pieces." + job.kit().family().word());
    double minutes = TEST_DEPTH * MM_PER_METRE / DrainProof.TEST_RAIN * MINUTES;
    List<List<String>> rows = new ArrayList<>();
    for (Job.Place place : job.places()) {
      Map<String, Double> areas = areas(place);
      for (Bay bay : place.served()) {
        double area = areas.getOrDefault(bay.id(), 0.0);
        rows.add(
            List.of(
                place.label(bay),
                job.writing().area(area),
                job.writing().volume(area * TEST_DEPTH),
                job.writing().volume(area * TEST_DEPTH / minutes),
                "",
                ""));
      }
    }
    return new Sheet(
        "hose",
        job.say("hose.title"),
        false,
        List.of(
            new Block.Text(
                job.say(
                    "hose.how",
                    job.writing().number(minutes, 0),
                    job.writing().isMetric()
                        ? job.writing().number(TEST_DEPTH * MM_PER_METRE, 0) + "\u00a0mm"
                        : job.length(TEST_DEPTH)),
                PLAIN),
            new Block.Text(job.say("hose.bucket"), PLAIN),
            new Block.Table(
                List.of(
                    Column.text(job.say("col.bay")),
                    Column.number(job.say("col.drains")),
                    Column.number(job.say("col.pour")),
                    Column.number(job.say("col.perMinute")),
                    Column.text(job.say("col.dryBelow")),
                    Column.text(job.say("col.seen"))),
                rows),
            new Block.Heading(job.say("hose.look")),
            new Block.Ticks(
                List.of(
                    new Tick("hose-1", job.say("hose.look.1"), ""),
                    new Tick("hose-2", job.say("hose.look.2"), ""),
                    new Tick("hose-3", job.say("hose.look.3"), ""),
                    new Tick("hose-4", job.say("hose.look.4", pieces), ""))),
            new Block.Text(job.say("hose.expected"), PLAIN)));
  }

  /** What of each bay of a field runs to an outlet, m². */
  private Map<String, Double> areas(Job.Place place) {
    Map<String, Double> areas = new HashMap<>();
    String field = place.layout().field() + "/";
    for (OutletShare share : job.design().proof().outlets()) {
      if (share.outlet().startsWith(field)) {
        share.bays().forEach((bay, area) -> areas.merge(bay, area, Double::sum));
      }
    }
    return areas;
  }
}
