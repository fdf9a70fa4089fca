package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.clash.IssueRegister;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.StopSign;
import org.underlee.finding.StoppedException;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.Layout;
import org.underlee.layout.Scope;
import org.underlee.panel.WideDeck;
import org.underlee.run.Comparison;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.FieldByField;
import org.underlee.run.Resync;
import org.underlee.run.Survey;
import org.underlee.takeoff.Buying;

/** Every stage of the work ends soon after nobody waits for it any more. */
class StopsTest {
  private static final long SOON_MS = 100;
  private static final int ROUNDS = 4;
  private static final int NEVER = Integer.MAX_VALUE;
  private static final Kit KIT = KitReader.builtIn();
  private static final Storm STORM = RainData.builtIn().service(RainData.ANYWHERE);

  private static final Map<String, Callable<?>> STAGES = new LinkedHashMap<>();

  @TempDir static Path folder;

  /** Does a stage; is told to stop at one of the times that the stage looks. */
  private static final class Worker extends Thread implements StopSign.Stoppable {
    private final Callable<?> stage;
    private final int stopAt;
    private int looks;
    private long lastLook = System.nanoTime();
    private long workThen = work();
    private long longest;
    private @Nullable Throwable end;

    Worker(Callable<?> stage, int stopAt) {
      this.stage = stage;
      this.stopAt = stopAt;
    }

    @Override
    public synchronized boolean isStopped() {
      long now = System.nanoTime();
      if (now - lastLook > 1_000_000) {
        long work = work();
        // on a busy machine time goes by without work, and helpers work at the same time
        longest = Math.max(longest, Math.min(now - lastLook, work - workThen));
        workThen = work;
        lastLook = now;
      }
      return ++looks >= stopAt;
    }

    private static long work() {
      return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
    }

    @Override
    public void run() {
      try {
        stage.call();
      } catch (Exception e) {
        end = e;
      }
      isStopped();
    }

    static Worker done(Callable<?> stage, int stopAt) throws InterruptedException {
      Worker worker = new Worker(stage, stopAt);
      worker.start();
      worker.join();
      return worker;
    }

    long longestMs() {
      return longest / 1_000_000;
    }
  }

  @BeforeAll
  static void prepare() throws IOException {
    Path model = folder.resolve("wide.ifc");
    WideDeck.write(model, 6, 40);
    Survey survey = DeckRun.survey(model);
    assertThat(survey.bays().size()).isEqualTo(6);
    Layout layout = DeckRun.layOut(survey, Scope.OUTSIDE, KIT, STORM);
    Design design = DeckRun.design(survey, Scope.OUTSIDE, layout, STORM);
    Path drained = folder.resolve("drained.ifc");
    DeckRun.save(design, model, drained);
    FieldByField fields = new FieldByField(survey);
    STAGES.put("reading", () -> DeckRun.survey(model));
    STAGES.put(
        "laying out",
        () ->
            fields.layOut(
                new FieldByField.Wish(Scope.OUTSIDE, KIT, STORM),
                Optional.empty(),
                Optional.empty(),
                new LayoutSteps(() -> true, (soFar, words) -> {})));
    STAGES.put("designing", () -> DeckRun.design(survey, Scope.OUTSIDE, layout, STORM));
    STAGES.put("clashes", () -> DeckRun.coordinate(design, IssueRegister.EMPTY));
    STAGES.put(
        "comparing",
        () ->
            Comparison.of(
                survey, Scope.OUTSIDE, List.of(KIT), List.of(), List.of(), Buying.PLAIN, STORM));
    STAGES.put(
        "resync", () -> Resync.of(model, drained, List.of(), Optional.empty(), Optional.empty()));
    STAGES.put(
        "writing",
        () -> {
          DeckRun.save(design, model, folder.resolve("out.ifc"));
          return true;
        });
  }

  static Stream<String> stages() {
    return STAGES.keySet().stream();
  }

  private static Callable<?> stage(String name) {
    return Optional.<Callable<?>>ofNullable(STAGES.get(name)).orElseThrow();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("stages")
  void looksAtTheSignAtLeastEveryTenthOfASecondAndStopsAtIt(String name)
      throws InterruptedException {
    long longest = Long.MAX_VALUE;
    int looks = 0;
    for (int round = 0; round < ROUNDS && longest > SOON_MS; round++) {
      Worker whole = Worker.done(stage(name), NEVER);
      assertThat(whole.end).isNull();
      longest = whole.longestMs(); // that of a later round, when Java has compiled what it needs
      looks = whole.looks;
    }
    assertThat(longest).as("work between two looks, ms").isLessThanOrEqualTo(SOON_MS);
    assertThat(looks).as("looks").isGreaterThan(4);

    Worker stopped = Worker.done(stage(name), looks / 2);
    assertThat(stopped.end).isInstanceOf(StoppedException.class);
  }

  @Test
  void aWriteThatIsStoppedAtAnyTimeLeavesTheFileAsItWas() throws Exception {
    Path out = folder.resolve("out.ifc");
    byte[] before = "what was there".getBytes(java.nio.charset.StandardCharsets.UTF_8);
    int looks = Worker.done(stage("writing"), NEVER).looks;
    for (int stopAt : List.of(1, 2, 3, looks / 2, looks - 2)) {
      Files.write(out, before);
      Worker stopped = Worker.done(stage("writing"), stopAt);
      assertThat(stopped.end).as("at look %s", stopAt).isInstanceOf(StoppedException.class);
      assertThat(Files.readAllBytes(out)).isEqualTo(before);
      try (Stream<Path> all = Files.list(folder)) {
        assertThat(all.map(f -> f.getFileName().toString())).noneMatch(n -> n.endsWith(".tmp"));
      }
    }
    Worker.done(stage("writing"), NEVER);
    assertThat(Files.readAllBytes(out)).isNotEqualTo(before);
  }

  @Test
  void inAThreadThatNobodyStopsTheSignNeverStops() {
    StopSign.here().obey();
    assertThat(Thread.currentThread()).isNotInstanceOf(StopSign.Stoppable.class);
  }
}
