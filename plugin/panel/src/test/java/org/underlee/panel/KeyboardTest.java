package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TableView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.panel.model.Command;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.Orbit;
import org.underlee.picture.DeckPicture.Family;

/** What can be done without a mouse, and where the keys go. */
@ExtendWith(ApplicationExtension.class)
class KeyboardTest {
  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private void open(FxRobot robot, String sample) throws IOException {
    Path model = bench.sample(sample);
    robot.interact(() -> bench.host.open(model));
    bench.whole();
    bench.settle();
  }

  private String focused() {
    return bench.stage.getScene().getFocusOwner().getId();
  }

  private Orbit orbit() {
    return bench.model().picture().orbit().orElseThrow();
  }

  @Test
  void afterGoingToAPictureTheArrowKeysMoveItAndARingSaysSo(FxRobot robot) throws IOException {
    open(robot, "harbour-balcony");
    robot.push(KeyCode.SHORTCUT, KeyCode.DIGIT1);
    Orbit first = orbit();
    robot.push(KeyCode.RIGHT);
    assertThat(orbit().turn()).as("turned").isNotEqualTo(first.turn());
    assertThat(orbit().target()).isEqualTo(first.target());
    Orbit turned = orbit();
    robot.push(KeyCode.SHIFT, KeyCode.RIGHT);
    assertThat(orbit().target()).as("moved").isNotEqualTo(turned.target());
    assertThat(orbit().turn()).isEqualTo(turned.turn());
    robot.push(KeyCode.HOME);
    assertThat(orbit().turn()).isCloseTo(turned.turn(), org.assertj.core.data.Offset.offset(1e-9));
    assertThat(orbit().target()).as("all of it").isNotEqualTo(turned.target());

    Region ring = robot.lookup("#picture3d .ring").queryAs(Region.class);
    assertThat(ring.getBorder()).isNotNull();
    for (KeyCode[] goes :
        new KeyCode[][] {{KeyCode.DIGIT2}, {KeyCode.DIGIT3}, {KeyCode.DIGIT4}, {KeyCode.DIGIT5}}) {
      robot.push(KeyCode.SHORTCUT, goes[0]);
      bench.settle();
      assertThat(focused()).isIn("plan", "section", "findings", "takeoff-table").isNotNull();
    }
    assertThat(ring.getBorder()).as("keys go elsewhere").isNull();
  }

  @Test
  void theListOfCommandsGoesAwayBesideAndWithEscapeAndGivesTheKeysBack(FxRobot robot)
      throws IOException {
    open(robot, "harbour-balcony");
    robot.push(KeyCode.SHORTCUT, KeyCode.DIGIT1);
    Node list = robot.lookup("#commands").query();
    robot.push(KeyCode.SHORTCUT, KeyCode.K);
    assertThat(list.isVisible()).isTrue();
    robot.push(KeyCode.ESCAPE);
    assertThat(list.isVisible()).isFalse();
    assertThat(focused()).isEqualTo("picture3d");

    robot.push(KeyCode.SHORTCUT, KeyCode.K).clickOn("#summary");
    assertThat(list.isVisible()).isFalse();
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("pla").push(KeyCode.SHORTCUT, KeyCode.DIGIT2);
    assertThat(list.isVisible()).isFalse();
    assertThat(focused()).as("its keys work while it is open").isEqualTo("plan");
  }

  @Test
  void whatCannotBeDoneNowIsThereAndSaysWhatItNeeds(FxRobot robot) throws IOException {
    open(robot, "harbour-balcony");
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("leave the selected bay");
    ListView<?> found = robot.lookup("#command-list").queryAs(ListView.class);
    Command command = (Command) found.getItems().get(0);
    assertThat(command.can().getAsBoolean()).isFalse();
    assertThat(command.needs()).isEqualTo("select a bay");
    assertThat(robot.lookup("#command-list .cannot").queryAllAs(Label.class))
        .extracting(Label::getText)
        .contains("select a bay");
    robot.push(KeyCode.ENTER);
    assertThat(robot.lookup("#commands").query().isVisible()).as("to be read").isTrue();
    robot.push(KeyCode.ESCAPE);
    robot.interact(() -> bench.model().select(Set.of(new Item.OfBay("deck-1/field-1", "B1"))));
    run(robot, "leave the selected bay");
    assertThat(bench.model().session().decisions().get().wishes().leaveOpen()).hasSize(1);
  }

  private static void run(FxRobot robot, String words) {
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write(words).push(KeyCode.ENTER);
  }

  @Test
  void listsTablesFieldsAndFamiliesAreReachedThroughTheListOfCommands(FxRobot robot)
      throws IOException {
    open(robot, "harbour-balcony");
    run(robot, "table: blocked");
    TableView<?> table = robot.lookup("#water-table").queryAs(TableView.class);
    assertThat(table.getAccessibleText()).isEqualTo("If an outlet is blocked");
    for (String field : List.of("deck", "low-end", "seat", "rain")) {
      robot.interact(() -> bench.view().requestFocus());
      run(
          robot,
          (field.equals("seat") || field.equals("rain") ? "set the " : "choose the ")
              + field.replace('-', ' '));
      assertThat(robot.lookup("#" + field).query().isFocused()).as(field).isTrue();
    }
    Family gutter = Family.values()[0];
    run(robot, "show or hide in 3-D: " + gutter.words());
    assertThat(bench.model().picture().isShown(gutter)).isFalse();

    robot.push(KeyCode.SHORTCUT, KeyCode.DIGIT4).push(KeyCode.DOWN);
    run(robot, "accept the selected finding");
    robot.clickOn("#accept-reason").write("seen on site").push(KeyCode.ENTER);
    bench.until(
        "accepted",
        () ->
            bench.model().session().decisions().get().accepted().values().stream()
                .anyMatch(a -> a.reason().equals("seen on site")));
  }

  @Test
  void lettersGrowWithTheSignAboveTheEqualsToo(FxRobot robot) throws IOException {
    open(robot, "harbour-balcony");
    int before = bench.model().settings().get().fontPercent();
    robot.push(KeyCode.SHORTCUT, KeyCode.SHIFT, KeyCode.EQUALS);
    robot.push(KeyCode.SHORTCUT, KeyCode.PLUS);
    assertThat(bench.model().settings().get().fontPercent()).isEqualTo(before + 20);
    robot.push(KeyCode.SHORTCUT, KeyCode.SUBTRACT);
    assertThat(bench.model().settings().get().fontPercent()).isEqualTo(before + 10);
  }

  @Test
  void anArrangementIsTakenWithEnterAndAllColumnsAreInSightOnASmallScreen(FxRobot robot)
      throws IOException {
    robot.interact(
        () -> {
          bench.stage.setWidth(1280);
          bench.stage.setHeight(800);
        });
    open(robot, "pine-deck");
    run(robot, "compare all");
    bench.until("compared", () -> bench.model().choices().comparison().get().isPresent());
    bench.settle();
    TableView<?> table = robot.lookup("#options-table").queryAs(TableView.class);
    double all = table.getColumns().stream().mapToDouble(c -> c.getWidth()).sum();
    assertThat(all).isLessThanOrEqualTo(table.getWidth());
    assertThat(table.getColumns()).extracting(c -> c.getText()).contains("Row", "Standing");

    int other = Math.max(0, table.getItems().size() - 1);
    robot.interact(() -> table.getSelectionModel().select(other));
    String kit =
        bench
            .model()
            .choices()
            .comparison()
            .get()
            .orElseThrow()
            .arrangements()
            .get(other)
            .kit()
            .id();
    robot.interact(table::requestFocus);
    robot.push(KeyCode.ENTER);
    assertThat(bench.whole().layout().kit().id()).isEqualTo(kit);
    robot.interact(() -> bench.model().session().decide("rain", d -> d.withRain("3in/h")));
    bench.until(
        "out of date",
        () ->
            robot
                .lookup("#options-words")
                .queryAs(Label.class)
                .getText()
                .startsWith("Out of date"));
  }

  @Test
  void issuesAreExportedBeforeAnyoneHasLookedAtThemAndNoServicesAreSaidToBeNone(FxRobot robot)
      throws IOException {
    open(robot, "harbour-balcony");
    Path bcf = bench.folder.resolve("issues.bcf");
    bench.answers.save = Optional.of(bcf);
    robot.push(KeyCode.SHORTCUT, KeyCode.B);
    bench.until("exported", () -> bench.model().saving().message().get().startsWith("Wrote"));
    assertThat(bcf).isNotEmptyFile();
    Consumer<String> shows =
        words -> assertThat(bench.model().services().state()).startsWith(words);
    shows.accept("Nothing was looked for yet");
    robot.push(KeyCode.SHORTCUT, KeyCode.DIGIT8);
    bench.until("looked", () -> bench.model().services().coordination().get().isPresent());
    shows.accept("No model of services is added");
  }
}
