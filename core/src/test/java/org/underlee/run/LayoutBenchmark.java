package org.underlee.run;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import org.underlee.check.Answer;
import org.underlee.check.CheckInput;
import org.underlee.check.Checks;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.Layout;
import org.underlee.takeoff.Takeoff;
import org.underlee.takeoff.TakeoffBuilder;

/**
 * One change of the fall on a surveyed deck, as the panel makes it while a hand drags: new parts,
 * checks and bill, without the proof of the water. Each call changes the fall, so that no part can
 * be kept from the call before; what the gutters carry does not depend on it and is kept, as it is
 * there. See docs/benchmarks/layout.md.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 4)
@Measurement(iterations = 3, time = 3)
public class LayoutBenchmark {
  private static final int STEEPEST = 90;
  private static final int FALLS = 7;

  @Param("deck.ifc")
  public String file = "";

  private final Storm storm = RainData.builtIn().service(RainData.ANYWHERE);
  private Optional<FieldByField> fields = Optional.empty();
  private Optional<Survey> survey = Optional.empty();
  private Optional<Layout> layout = Optional.empty();
  private int round;

  @Setup
  public void survey() {
    Survey read = DeckRun.survey(Path.of(file));
    survey = Optional.of(read);
    fields = Optional.of(new FieldByField(read));
    layout = Optional.of(parts());
  }

  @Benchmark
  public void partsChecksAndTakeoff(Blackhole hole) {
    Layout changed = parts();
    hole.consume(TakeoffBuilder.of(changed));
    hole.consume(checked(changed));
  }

  @Benchmark
  public Layout parts() {
    round++;
    int runPerFall = STEEPEST + round % FALLS;
    Kit kit = KitReader.builtIn().with(DrainValue.RUN_PER_FALL, runPerFall, "benchmark");
    return fields
        .orElseThrow()
        .layOut(
            new FieldByField.Wish(org.underlee.layout.Scope.OUTSIDE, kit, storm),
            Optional.empty(),
            Optional.empty(),
            new ToTheEnd())
        .orElseThrow();
  }

  /** Wants it all, and looks at nothing on the way. */
  private record ToTheEnd() implements FieldByField.Watcher {
    @Override
    public boolean goesOn() {
      return true;
    }

    @Override
    public void sees(Layout soFar, int done, int all) {}
  }

  @Benchmark
  public Answer checks() {
    return checked(layout.orElseThrow());
  }

  @Benchmark
  public Takeoff takeoff() {
    return TakeoffBuilder.of(layout.orElseThrow());
  }

  private Answer checked(Layout laidOut) {
    Survey deck = survey.orElseThrow();
    return Checks.of(CheckInput.of(deck.bays(), deck.elements(), laidOut, storm, List.of()));
  }
}
