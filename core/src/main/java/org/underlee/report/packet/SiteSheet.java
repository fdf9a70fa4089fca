package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;

import java.util.ArrayList;
import java.util.List;
import org.underlee.check.SiteQuestion;
import org.underlee.report.packet.Block.Tick;

/** What to look at before work: the model could not tell. */
record SiteSheet(Job job) {
  Sheet sheet() {
    List<Tick> ticks = new ArrayList<>();
    for (SiteQuestion q : job.design().checks().questions()) {
      ticks.add(
          new Tick(
              "site-" + (ticks.size() + 1),
              job.writing().translated(q.text()),
              job.writing().translated(q.why()) + " (" + q.source() + ")"));
    }
    return new Sheet(
        "site",
        job.say("site.title"),
        false,
        List.of(new Block.Text(job.say("site.how"), PLAIN), new Block.Ticks(ticks)));
  }
}
