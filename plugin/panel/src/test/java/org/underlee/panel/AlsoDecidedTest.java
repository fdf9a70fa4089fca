package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.layout.Onto;
import org.underlee.layout.Wishes;
import org.underlee.panel.model.AlsoDecided;
import org.underlee.panel.model.Decisions;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.Memory;
import org.underlee.run.HighLineAsked;
import org.underlee.units.Lengths.UnitSystem;

/** What is decided is seen, and each of it is taken back by itself. */
@ExtendWith(ApplicationExtension.class)
class AlsoDecidedTest {
  private static final String FIELD = "deck-1/field-1";

  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private List<String> words() {
    return bench.model().alsoDecided().rows(UnitSystem.METRIC).stream()
        .map(AlsoDecided.Row::words)
        .toList();
  }

  @Test
  void eachDecisionHasARowAndGoesWithoutTheOthers(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    Decisions base =
        Decisions.FIRST
            .withBoardsOff(true)
            .turning(new Item.OfBay(FIELD, "B2"))
            .turnedAt(new HighLineAsked("deck-9/field-1", OptionalDouble.of(2.36)))
            .withRole("an-element", Optional.of("not-framing"))
            .withOutlets(FIELD, List.of(0.5, 3.0));
    Wishes more = base.wishes().with(List.of(Onto.parse("12m2@3.2,1.5")));
    Decisions all =
        new Decisions(
            base.deck(),
            base.kit(),
            base.runPerFall(),
            base.rain(),
            base.services(),
            base.accepted(),
            more,
            base.roles(),
            base.bothWays());
    new Memory(bench.folder.resolve("state")).keep(pine, all);
    robot.interact(() -> bench.host.open(pine));
    assertThat(words())
        .containsExactly(
            "The boards are off, or not yet laid",
            "Left open: B2 of deck-1/field-1",
            "deck-9/field-1 falls both ways, its high line 2360 mm from its high end",
            "Outlets of deck-1/field-1 at 500 mm, 3000 mm",
            "Rain of 12.00 m² comes onto 3.20, 1.50 (metres in the model)",
            "“an-element” is not-framing");
    for (int i = words().size() - 1; i >= 0; i--) {
      List<String> left = words().subList(0, i);
      int last = i;
      robot.interact(
          () ->
              bench
                  .model()
                  .alsoDecided()
                  .remove(bench.model().alsoDecided().rows(UnitSystem.METRIC).get(last)));
      assertThat(words()).isEqualTo(left);
    }
    assertThat(bench.model().session().decisions().get()).isEqualTo(Decisions.FIRST);
  }

  @Test
  void aBayLeftOpenIsSeenUnderTheDecisionsAndTakenBackThere(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
    assertThat(robot.lookup("#also-decided").queryAs(Pane.class).getParent().isVisible()).isFalse();
    robot.interact(() -> bench.model().select(java.util.Set.of(new Item.OfBay(FIELD, "B2"))));
    robot.push(KeyCode.SHORTCUT, KeyCode.L);
    bench.whole();
    assertThat(robot.lookup("#also-decided .label").queryAs(Label.class).getText())
        .isEqualTo("Left open: B2 of F1");
    robot.interact(() -> robot.lookup(".take-back").queryButton().fire());
    bench.whole();
    assertThat(bench.model().session().decisions().get()).isEqualTo(Decisions.FIRST);
    assertThat(robot.lookup("#also-decided").queryAs(Pane.class).getChildren()).isEmpty();
    robot.interact(() -> bench.view().requestFocus());
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    assertThat(words()).hasSize(1);
    bench.whole();
  }

  @Test
  void theBoardsAreOffOrInPlaceAsIsSaid(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("boards in place").push(KeyCode.ENTER);
    assertThat(words()).as("they are already").isEmpty();
    robot.push(KeyCode.ESCAPE);
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("boards are off").push(KeyCode.ENTER);
    assertThat(words()).containsExactly("The boards are off, or not yet laid");
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("boards in place").push(KeyCode.ENTER);
    assertThat(words()).isEmpty();
    bench.whole();
  }
}
