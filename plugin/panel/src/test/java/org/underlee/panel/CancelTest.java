package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.panel.model.Result;

/** Whoever waits need not. */
@ExtendWith(ApplicationExtension.class)
class CancelTest {
  private static final long SOON_MS = 1000;
  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private Path wide() throws IOException {
    Path file = bench.folder.resolve("wide.ifc");
    WideDeck.write(file, 2, 200);
    return file;
  }

  private void untilBusyWith(String what) {
    bench.until(what, () -> bench.model().running().words().get().startsWith(what));
  }

  private static String words(FxRobot robot) {
    return robot.lookup("#status-words").queryAs(Label.class).getText();
  }

  /** Threads of ours whose work is done end soon; those that go on would take from what comes. */
  private static void assertNoneWorks(String name) throws InterruptedException {
    long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(SOON_MS);
    boolean works = true;
    while (works && System.nanoTime() < until) {
      TimeUnit.MILLISECONDS.sleep(5);
      works =
          Thread.getAllStackTraces().entrySet().stream()
              .filter(e -> e.getKey().getName().equals(name))
              .anyMatch(
                  e ->
                      java.util.Arrays.stream(e.getValue())
                          .anyMatch(f -> f.getClassName().startsWith("org.underlee.run")));
    }
    assertThat(works).as(name + " still works").isFalse();
  }

  @Test
  void aLongDesignIsStoppedAndAnEditOrAnotherModelComesAfterIt(FxRobot robot)
      throws IOException, InterruptedException {
    Path wide = wide();
    robot.interact(() -> bench.host.open(wide));
    Result first = bench.whole();

    robot.interact(
        () -> bench.model().session().decide("fall", d -> d.withRunPerFall(OptionalDouble.of(70))));
    untilBusyWith("Checking");
    assertThat(robot.lookup("#cancel").queryAs(Button.class).isVisible()).isTrue();
    robot.push(KeyCode.ESCAPE);
    bench.until("at rest", () -> !bench.model().running().isRunning());
    assertNoneWorks("designing");
    assertThat(words(robot)).startsWith("Stopped.").contains("F5 goes on");
    assertThat(bench.model().session().stale().get()).isTrue();
    assertThat(robot.lookup("#stale").queryAs(Label.class).isVisible()).isTrue();
    Result shown = bench.model().session().result().get().orElseThrow();
    assertThat(shown.isWhole()).isFalse();
    assertThat(shown.design()).as("the bill of before is still there").isEqualTo(first.design());

    robot.push(KeyCode.F5);
    Result gone = bench.whole();
    assertThat(Math.round(1 / gone.layout().kit().fall())).isEqualTo(70);
    assertThat(bench.model().session().stale().get()).isFalse();

    robot.interact(
        () -> bench.model().session().decide("fall", d -> d.withRunPerFall(OptionalDouble.of(80))));
    untilBusyWith("Checking");
    robot.clickOn("#cancel");
    robot.interact(
        () -> bench.model().session().decide("fall", d -> d.withRunPerFall(OptionalDouble.of(90))));
    Result edited = bench.whole();
    assertThat(Math.round(1 / edited.layout().kit().fall())).isEqualTo(90);

    robot.interact(
        () -> bench.model().session().decide("fall", d -> d.withRunPerFall(OptionalDouble.of(60))));
    untilBusyWith("Checking");
    robot.push(KeyCode.ESCAPE);
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    assertThat(bench.whole().survey().source().file()).isEqualTo("pine-deck.ifc");
    assertThat(bench.model().session().stale().get()).isFalse();
  }

  @Test
  void aNewerEditStopsTheDesignOfTheOneBefore(FxRobot robot)
      throws IOException, InterruptedException {
    Path wide = wide();
    robot.interact(() -> bench.host.open(wide));
    bench.whole();
    robot.interact(
        () -> bench.model().session().decide("fall", d -> d.withRunPerFall(OptionalDouble.of(70))));
    untilBusyWith("Checking");
    robot.interact(
        () -> bench.model().session().drag("fall", d -> d.withRunPerFall(OptionalDouble.of(71))));
    assertNoneWorks("designing");
    robot.interact(
        () -> bench.model().session().decide("fall", d -> d.withRunPerFall(OptionalDouble.of(72))));
    assertThat(Math.round(1 / bench.whole().layout().kit().fall())).isEqualTo(72);
  }

  @Test
  void readingIsStoppedBeforeAnythingIsThereAndGoesOnWhenAsked(FxRobot robot) throws IOException {
    Path wide = wide();
    robot.interact(
        () -> {
          bench.host.open(wide);
          bench.model().running().cancel();
        });
    assertThat(bench.model().session().result().get()).isEmpty();
    assertThat(words(robot)).contains("F5 reads the model again");
    robot.push(KeyCode.F5);
    assertThat(bench.whole().survey().bays().size()).isEqualTo(2);
    assertThat(words(robot)).doesNotContain("Stopped");
  }

  @Test
  void aCancelledWriteLeavesTheFileAsItWas(FxRobot robot) throws IOException {
    Path wide = wide();
    robot.interact(() -> bench.host.open(wide));
    bench.whole();
    Path target = bench.folder.resolve("wide.drained.ifc");
    Files.writeString(target, "what was there");
    robot.interact(
        () -> {
          bench.model().saving().write(target, false);
          assertThat(bench.model().running().words().get()).isEqualTo("Writing wide.drained.ifc");
          bench.model().running().cancel();
        });
    assertThat(words(robot)).isEqualTo("Stopped. The file is as it was.");
    Path other = bench.folder.resolve("takeoff.csv");
    bench.answers.save = Optional.of(other);
    robot.push(KeyCode.SHORTCUT, KeyCode.E);
    bench.until("exported", () -> bench.model().saving().message().get().startsWith("Wrote take"));
    assertThat(Files.readString(target)).isEqualTo("what was there");
  }
}
