package org.underlee.run;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.underlee.check.CheckInput;
import org.underlee.check.Checks;
import org.underlee.drainage.DrainCases;
import org.underlee.drainage.DrainProof;
import org.underlee.drainage.WaterProver;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.Layout;
import org.underlee.layout.Scope;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDecks;
import org.underlee.takeoff.TakeoffBuilder;

/**
 * How long one change of the fall takes on decks of more and more bays, step by step: parts, bill,
 * proof, checks. Prints the median of the thread's own time and of the clock's, milliseconds.
 * Arguments: rounds, then numbers of bays.
 */
public final class LayoutSpeed {
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
  private static final List<String> STEPS = List.of("parts", "bill", "proof", "checks", "all");

  private LayoutSpeed() {}

  public static void main(String[] args) {
    int rounds = Integer.parseInt(args[0]);
    for (int i = 1; i < args.length; i++) {
      measure(Integer.parseInt(args[i]), rounds);
    }
  }

  private static void measure(int bays, int rounds) {
    Survey survey =
        DeckRun.survey(
            IfcEmitter.emit(SampleDecks.plain(3600, 406.4, bays + 1), Mix.PLAIN), "deck.ifc");
    List<double[]> own = new ArrayList<>();
    List<double[]> clock = new ArrayList<>();
    for (int round = 0; round < rounds; round++) {
      Kit kit = KitReader.builtIn().with(DrainValue.RUN_PER_FALL, 90 + round % 7, "test");
      List<Long> ownAt = new ArrayList<>();
      List<Long> clockAt = new ArrayList<>();
      change(survey, kit, ownAt, clockAt);
      own.add(steps(ownAt));
      clock.add(steps(clockAt));
    }
    for (int step = 0; step < STEPS.size(); step++) {
      System.out.printf(
          Locale.ROOT,
          "%4d bays, %-6s: own %7.1f ms, clock %7.1f ms%n",
          bays,
          STEPS.get(step),
          median(own, step),
          median(clock, step));
    }
  }

  private static void change(Survey survey, Kit kit, List<Long> own, List<Long> clock) {
    Storm storm = RainData.builtIn().service(RainData.ANYWHERE);
    tick(own, clock);
    Layout layout = DeckRun.layOut(survey, Scope.OUTSIDE, kit, storm);
    tick(own, clock);
    TakeoffBuilder.of(layout);
    tick(own, clock);
    DrainProof proof = WaterProver.prove(DrainCases.of(survey.bays(), layout));
    tick(own, clock);
    Checks.of(CheckInput.of(survey.bays(), survey.elements(), layout, storm, proof.outlets()));
    tick(own, clock);
  }

  private static void tick(List<Long> own, List<Long> clock) {
    own.add(THREADS.getCurrentThreadCpuTime());
    clock.add(System.nanoTime());
  }

  private static double[] steps(List<Long> at) {
    double[] steps = new double[STEPS.size()];
    for (int i = 0; i + 1 < at.size(); i++) {
      steps[i] = (at.get(i + 1) - at.get(i)) / 1e6;
    }
    steps[STEPS.size() - 1] = (at.get(at.size() - 1) - at.get(0)) / 1e6;
    return steps;
  }

  /** Of the second half of the rounds: the first warms up. */
  private static double median(List<double[]> all, int step) {
    double[] late =
        all.subList(all.size() / 2, all.size()).stream().mapToDouble(s -> s[step]).toArray();
    Arrays.sort(late);
    return late[late.length / 2];
  }
}
