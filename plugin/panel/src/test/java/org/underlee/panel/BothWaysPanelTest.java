package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonType;
import javafx.scene.control.DialogPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.finding.Fix;
import org.underlee.framing.Field;
import org.underlee.framing.HighLine;
import org.underlee.layout.FieldLayout;
import org.underlee.panel.model.Decisions;
import org.underlee.panel.model.FindingList;
import org.underlee.panel.model.Memory;
import org.underlee.panel.model.Result;
import org.underlee.units.Words;

/** A deck that stands free is let fall both ways in the panel, kept, and taken back. */
@ExtendWith(ApplicationExtension.class)
class BothWaysPanelTest {
  private static final String FIELD = "deck-1/field-1";

  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private Result open(FxRobot robot, String sample) throws IOException {
    Path model = bench.sample(sample);
    robot.interact(() -> bench.host.open(model));
    return bench.whole();
  }

  private static int served(Result result) {
    return result.layout().fields().stream().mapToInt(f -> f.bays().size()).sum();
  }

  @Test
  void theFieldAtHandFallsBothWaysAndOneWayAgain(FxRobot robot) throws IOException {
    Result oneWay = open(robot, "hard-cases/both-ways");
    assertThat(served(oneWay)).isEqualTo(2);
    assertThat(bench.model().selecting().mayTurnWays()).isTrue();
    robot.interact(bench.model().selecting()::turnWays);
    Result both = bench.whole();
    assertThat(both.layout().fields())
        .extracting(FieldLayout::field)
        .containsExactly(FIELD, "deck-1/field-2");
    assertThat(served(both)).isEqualTo(6);
    Path model = bench.model().session().model().get().orElseThrow();
    assertThat(new Memory(bench.folder.resolve("state")).decisions(model))
        .contains(both.decisions());
    robot.interact(() -> bench.view().requestFocus());
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    bench.until("undone", () -> bench.model().session().decisions().get().bothWays().isEmpty());
    assertThat(bench.whole().layout()).isEqualTo(oneWay.layout());
  }

  @Test
  void aFixThatAsksForBothWaysIsOneThatThePanelCanApply(FxRobot robot) throws IOException {
    Result oneWay = open(robot, "hard-cases/both-ways");
    Fix.Option option = new Fix.Option("--both-ways", FIELD);
    Fix.Action action = new Fix.Action(List.of(option), Words.of("both ways"));
    Decisions fixed = FindingList.fixed(oneWay.decisions(), action).orElseThrow();
    assertThat(fixed.bothWays()).isEqualTo(Set.of(FIELD));
    Fix.Option elsewhere = new Fix.Option("--both-ways", FIELD + "@2.2m");
    Fix.Action moved = new Fix.Action(List.of(elsewhere), Words.of("from there"));
    assertThat(FindingList.fixed(fixed, moved).orElseThrow().bothWays())
        .isEqualTo(Set.of(FIELD + "@2.2m"));
  }

  @Test
  void theHighLineIsPutWhereTheCommandIsAnsweredAndGivenBackByAnEmptyAnswer(FxRobot robot)
      throws IOException {
    open(robot, "hard-cases/both-ways");
    answer(robot, "half way", false);
    answer(robot, "2.2 m", true);
    Result asked = bench.whole();
    assertThat(asked.decisions().bothWays()).isEqualTo(Set.of(FIELD + "@2.2m"));
    assertThat(line(asked).station()).isEqualTo(2.2);
    Path model = bench.model().session().model().get().orElseThrow();
    assertThat(new Memory(bench.folder.resolve("state")).decisions(model))
        .contains(asked.decisions());
    answer(robot, "", true);
    assertThat(line(bench.whole()).asked()).isFalse();
    robot.interact(bench.model().selecting()::turnWays);
    assertThat(bench.whole().decisions().bothWays()).isEmpty();
  }

  /** Asks for the high line and types where it is to be. */
  private void answer(FxRobot robot, String text, boolean isLength) {
    robot.interact(() -> bench.view().requestFocus());
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("put the high").push(KeyCode.ENTER);
    bench.until("asked", () -> robot.lookup("#asked-length").tryQuery().isPresent());
    TextField field = robot.lookup("#asked-length").query();
    robot.interact(() -> field.setText(text));
    DialogPane ask = (DialogPane) field.getScene().getRoot();
    Node ok = ask.lookupButton(ButtonType.OK);
    assertThat(ok.isDisabled()).isEqualTo(!isLength);
    Node pushed = isLength ? ok : ask.lookupButton(ButtonType.CANCEL);
    robot.interact(((Button) pushed)::fire);
  }

  private static HighLine line(Result result) {
    return result.survey().framing().fields().findFirst().flatMap(Field::highLine).orElseThrow();
  }

  @Test
  void aFieldAtAHouseIsNotOffered(FxRobot robot) throws IOException {
    open(robot, "hard-cases/run-too-long");
    assertThat(bench.model().selecting().mayTurnWays()).isFalse();
  }
}
