package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;
import static org.underlee.report.packet.Block.Tone.STRONG;

import java.util.ArrayList;
import java.util.List;
import org.underlee.report.packet.Block.Tick;

/** What the owner looks after. */
record CareSheet(Job job) {
  private static final int CARE_STEPS = 7;

  Sheet sheet() {
    String pieces = job.say("pieces." + job.kit().family().word());
    List<Tick> ticks = new ArrayList<>();
    for (int i = 1; i <= CARE_STEPS; i++) {
      ticks.add(
          new Tick("care-" + i, job.say("care." + i, pieces), job.say("care.why." + i, pieces)));
    }
    return new Sheet(
        "care",
        job.say("care.title"),
        false,
        List.of(
            new Block.Text(job.say("care.how"), PLAIN),
            new Block.Ticks(ticks),
            new Block.Text(job.say("care.never", pieces), STRONG)));
  }
}
