package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.panel.model.Decisions;

/** What is typed counts when it is done, and is never written over before. */
@ExtendWith(ApplicationExtension.class)
class TypedDecisionsTest {
  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private void open(FxRobot robot) throws IOException {
    java.nio.file.Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
  }

  private Decisions decided() {
    return bench.model().session().decisions().get();
  }

  private static String text(FxRobot robot, String field) {
    return robot.lookup(field).queryAs(TextField.class).getText();
  }

  @Test
  void aSeatBelowTheJoistsIsTypedAndCountsWhenTheFieldIsLeft(FxRobot robot) throws IOException {
    open(robot);
    robot.clickOn("#seat").write("-20 mm").push(KeyCode.TAB);
    bench.until("decided", () -> decided().seat().isPresent());
    assertThat(decided().seat().orElseThrow()).isEqualTo(-0.02, within(1e-12));
    bench.whole();
    assertThat(text(robot, "#seat")).startsWith("-").endsWith("\"");
    robot.clickOn("#seat").push(KeyCode.SHORTCUT, KeyCode.A).push(KeyCode.DELETE);
    robot.push(KeyCode.TAB);
    bench.until("given back", () -> decided().seat().isEmpty());
  }

  @Test
  void whatIsBeingTypedIsNotWrittenOverAndItsUndoIsTheFieldsOwn(FxRobot robot) throws IOException {
    open(robot);
    robot.clickOn("#fall-text").push(KeyCode.SHORTCUT, KeyCode.A).write("1:8");
    robot.interact(
        () -> bench.model().session().decide("seat", d -> d.withSeat(OptionalDouble.of(0.03))));
    bench.whole();
    assertThat(text(robot, "#fall-text")).isEqualTo("1:8");
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    assertThat(decided().seat()).hasValue(0.03);
    robot.push(KeyCode.SHORTCUT, KeyCode.A).write("1:80").push(KeyCode.TAB);
    bench.until("decided", () -> decided().runPerFall().equals(OptionalDouble.of(80)));
  }

  @Test
  void whatCannotBeTakenSaysSoAndStaysToBeTypedOn(FxRobot robot) throws IOException {
    open(robot);
    robot.clickOn("#seat").write("low").push(KeyCode.ENTER);
    assertThat(robot.lookup("#slip").queryAs(Label.class).getText()).contains("is not a length");
    assertThat(text(robot, "#seat")).isEqualTo("low");
    assertThat(decided().seat()).isEmpty();
  }

  @Test
  void whatCannotBeDoneNowIsGreyAndUndoSaysWhatItTakesBack(FxRobot robot) throws IOException {
    for (String id : List.of("#undo", "#redo", "#export", "#write")) {
      assertThat(robot.lookup(id).queryAs(Node.class).isDisabled()).as(id).isTrue();
    }
    open(robot);
    assertThat(robot.lookup("#write").queryAs(Node.class).isDisabled()).isFalse();
    assertThat(robot.lookup("#undo").queryAs(Node.class).isDisabled()).isTrue();
    robot.interact(() -> bench.model().setFall(OptionalDouble.of(80)));
    bench.whole();
    Node undo = robot.lookup("#undo").queryAs(Node.class);
    assertThat(undo.isDisabled()).isFalse();
    assertThat(undo.getAccessibleText()).isEqualTo("Undo: Set the fall");
  }

  @Test
  void arrowKeysStepTheFallFromOneUsualOneToTheNext(FxRobot robot) throws IOException {
    open(robot);
    robot.interact(() -> robot.lookup("#fall").queryAs(Node.class).requestFocus());
    robot.push(KeyCode.RIGHT);
    bench.until("steeper", () -> decided().runPerFall().equals(OptionalDouble.of(90)));
    robot.push(KeyCode.LEFT).push(KeyCode.LEFT);
    bench.until("flatter", () -> decided().runPerFall().equals(OptionalDouble.of(102)));
  }
}
