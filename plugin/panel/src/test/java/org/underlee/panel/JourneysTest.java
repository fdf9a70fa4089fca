package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.Slider;
import javafx.scene.control.TableView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.panel.model.Acceptance;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.Result;
import org.underlee.panel.model.ServiceIssue;
import org.underlee.report.bcf.BcfReader;
import org.underlee.report.bcf.BcfTopic;
import org.underlee.run.Arrangement;
import org.underlee.run.DeckRun;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/** What people do from opening a model to what they came for: pressing, typing and dragging. */
@ExtendWith(ApplicationExtension.class)
class JourneysTest {
  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private Result open(FxRobot robot, String sample) throws IOException {
    bench.answers.open = Optional.of(bench.sample(sample));
    robot.clickOn("#welcome-open");
    return bench.whole();
  }

  private static void enter(FxRobot robot, String field, String text) {
    robot.clickOn(field).push(KeyCode.SHORTCUT, KeyCode.A).write(text).push(KeyCode.ENTER);
  }

  /** An architect adds a dry-below system to a model of two decks. */
  @Test
  void anArchitectChoosesADeckTriesKitsAndWrites(FxRobot robot) throws IOException {
    Result all = open(robot, "hillside-terrace");
    assertThat(all.layout().fields()).hasSize(3);

    robot.clickOn("#deck").type(KeyCode.DOWN, 2).type(KeyCode.ENTER);
    Result one = bench.whole();
    assertThat(one.decisions().deck()).contains("deck-2");
    assertThat(one.layout().fields()).hasSize(1);

    robot.clickOn("#kit").type(KeyCode.DOWN).type(KeyCode.ENTER);
    assertThat(bench.whole().layout().kit().id()).isEqualTo("galvanised-steel");
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    assertThat(bench.whole().layout().kit().id()).isEqualTo("formed-aluminium");
    robot.push(KeyCode.SHORTCUT, KeyCode.Y);
    assertThat(bench.whole().layout().kit().id()).isEqualTo("galvanised-steel");

    robot.clickOn("#tab-options").clickOn("#compare");
    bench.until("compared", () -> bench.model().choices().comparison().get().isPresent());
    TableView<?> ways = robot.lookup("#options-table").queryAs(TableView.class);
    Arrangement best =
        bench.model().choices().comparison().get().orElseThrow().arrangements().get(0);
    robot.interact(() -> ways.getSelectionModel().select(0));
    robot.clickOn("#choose");
    Result chosen = bench.whole();
    assertThat(chosen.decisions().lowEnd()).contains(best.lowEnd());
    assertThat(chosen.layout().fields().get(0).seatHigh())
        .isEqualTo(best.fields().get(0).seatHigh());
    assertThat(chosen.layout().kit().id()).isEqualTo(best.kit().id());

    Path model = bench.model().session().model().get().orElseThrow();
    byte[] before = Files.readAllBytes(model);
    robot.clickOn("#write");
    assertThat(robot.lookup("#write-bytes").queryAs(Label.class).getText())
        .contains("none of the model's own is changed");
    robot.clickOn("#write-now");
    bench.until("written", () -> bench.model().saving().message().get().startsWith("Wrote"));
    Path written = bench.folder.resolve("hillside-terrace.drained.ifc");
    assertThat(Files.size(written)).isGreaterThan(before.length);
    assertThat(Files.readAllBytes(model)).isEqualTo(before);
    Path stripped = bench.folder.resolve("stripped.ifc");
    assertThat(DeckRun.strip(written, stripped)).isTrue();
    assertThat(Files.readAllBytes(stripped)).isEqualTo(before);

    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("take the last write").push(KeyCode.ENTER);
    bench.until("taken back", () -> !Files.exists(written));
    bench.until("said", () -> bench.model().saving().message().get().contains("before the last"));
    assertThat(bench.model().saving().canUndoWrite()).isFalse();
  }

  /** A builder takes quantities in the units of his tape. */
  @Test
  void aBuilderReadsFeetAndInchesSetsAFallAndTakesTheCutList(FxRobot robot) throws IOException {
    Result first = open(robot, "pine-deck");
    assertThat(bench.model().units().get()).isEqualTo(UnitSystem.IMPERIAL);
    robot.clickOn("#units");
    assertThat(bench.model().units().get()).isEqualTo(UnitSystem.METRIC);
    robot.clickOn("#units");

    enter(robot, "#fall-text", "steep");
    assertThat(robot.lookup("#slip").queryAs(Label.class).getText()).contains("is no fall");
    enter(robot, "#fall-text", "1/4 in per ft");
    Result steeper = bench.whole();
    assertThat(1 / steeper.layout().kit().fall())
        .isEqualTo(48, org.assertj.core.api.Assertions.within(1e-9));
    assertThat(steeper.layout()).isNotEqualTo(first.layout());

    enter(robot, "#seat", "low");
    assertThat(robot.lookup("#slip").queryAs(Label.class).getText()).contains("is not a length");
    double seat = steeper.layout().fields().get(0).seatHigh();
    enter(robot, "#seat", Lengths.feetInches(seat - Lengths.INCH / 8));
    assertThat(bench.whole().layout().fields().get(0).seatHigh())
        .isEqualTo(
            seat - Lengths.INCH / 8, org.assertj.core.api.Assertions.within(Lengths.INCH / 16));
    robot.interact(() -> bench.view().requestFocus());
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    assertThat(bench.whole().layout()).isEqualTo(steeper.layout());

    robot.clickOn("#tab-takeoff").clickOn("#takeoff-show-2");
    TableView<?> cuts = robot.lookup("#takeoff-table").queryAs(TableView.class);
    assertThat(cuts.getItems()).hasSize(steeper.design().orElseThrow().takeoff().cuts().size());

    Path csv = bench.folder.resolve("takeoff.csv");
    bench.answers.save = Optional.of(csv);
    robot.push(KeyCode.SHORTCUT, KeyCode.E);
    bench.until(
        "exported", () -> bench.model().saving().message().get().startsWith("Wrote takeoff"));
    assertThat(Files.readString(csv)).startsWith("row,item,").contains("\r\ncut,", "\r\nbuy,");
  }

  /** A coordinator brings the services of other trades and answers for each clash. */
  @Test
  void aCoordinatorGoesThroughClashesAndTakesThemAwayAsBcf(FxRobot robot) throws IOException {
    open(robot, "pine-deck");
    Path services = bench.folder.resolve("services.ifc");
    // The water pipe as its designer has moved it: where it was, no pan could be hung.
    String drawn = Files.readString(Bench.ROOT.resolve("samples/pine-deck/services.ifc"));
    Files.writeString(services, drawn.replace("2352.0400", "2252.0400"));
    robot.clickOn("#tab-services");
    bench.until("looked", () -> bench.model().services().coordination().get().isPresent());
    bench.answers.open = Optional.of(services);
    robot.clickOn("#add-services");
    Result around = bench.whole();
    assertThat(around.decisions().services()).containsExactly(services.toString());
    bench.until(
        "looked again",
        () ->
            bench
                .model()
                .services()
                .coordination()
                .get()
                .filter(c -> c.files().containsKey("services.ifc"))
                .isPresent());
    List<ServiceIssue> issues = bench.model().services().issues();
    assertThat(issues).isNotEmpty();
    ListView<?> list = robot.lookup("#services").queryAs(ListView.class);
    assertThat(list.getItems()).hasSize(issues.size());

    robot.interact(() -> list.getSelectionModel().select(0));
    assertThat(bench.model().selection().get()).isEqualTo(issues.get(0).places());

    robot.clickOn("#tab-findings").clickOn("#findings-filter").write("net-fall");
    robot.clickOn("Set the fall to 1:64");
    assertThat(1 / bench.whole().layout().kit().fall())
        .isEqualTo(64, org.assertj.core.api.Assertions.within(1e-9));
    robot.interact(() -> bench.view().requestFocus());
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    bench.whole();

    robot.clickOn("#tab-services");
    bench.until("at rest", () -> !bench.model().services().busy().get());
    robot.clickOn(
        robot.lookup("#services").lookup(".accept").queryAllAs(Button.class).iterator().next());
    robot.clickOn("#accept-reason").write("agreed on site").push(KeyCode.ENTER);
    bench.until("accepted", () -> bench.model().session().decisions().get().accepted().size() == 1);
    bench.whole();
    bench.until(
        "shown",
        () ->
            robot.lookup("#services-count").queryAs(Label.class).getText().endsWith("1 accepted"));

    Path bcf = bench.folder.resolve("clashes.bcf");
    bench.answers.save = Optional.of(bcf);
    robot.clickOn("#export-bcf");
    bench.until("exported", () -> bench.model().saving().message().get().startsWith("Wrote clash"));
    List<BcfTopic> topics = BcfReader.read(Files.readAllBytes(bcf), "clashes.bcf");
    assertThat(topics).hasSize(issues.size());
    assertThat(topics).extracting(BcfTopic::status).containsOnlyOnce("Accepted");
  }

  @Test
  void draggingTheFallKeepsThePictureLiveAndIsOneStepToUndo(FxRobot robot) throws IOException {
    Result before = open(robot, "pine-deck");
    Slider fall = robot.lookup("#fall").queryAs(Slider.class);
    robot.drag(robot.lookup("#fall .thumb").queryAs(javafx.scene.Node.class), MouseButton.PRIMARY);
    for (int i = 0; i < 10; i++) {
      robot.moveBy(4, 0);
    }
    robot.drop();
    Result after = bench.whole();
    assertThat(after.layout().kit().fall()).isGreaterThan(before.layout().kit().fall() * 1.2);
    assertThat(fall.getValue()).isGreaterThan(1.0 / 96);
    robot.interact(() -> bench.view().requestFocus());
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    assertThat(bench.whole().decisions()).isEqualTo(before.decisions());
    assertThat(bench.model().session().toUndo().get()).isEmpty();
  }

  @Test
  void whatIsPickedInThePictureIsSelectedEverywhere(FxRobot robot) throws IOException {
    open(robot, "pine-deck");
    bench.settle();
    robot.clickOn("#picture3d");
    Set<Item> picked = bench.model().selection().get();
    assertThat(picked).hasSize(1);
    assertThat(robot.lookup(".inspector-name").queryAs(Label.class).getText()).isNotEmpty();
    robot.moveTo("#picture3d").drag(MouseButton.PRIMARY).moveBy(60, 20).drop();
    assertThat(bench.model().selection().get())
        .as("turning selects nothing else")
        .isEqualTo(picked);
    robot.interact(() -> bench.model().select(Set.of(new Item.OfBay("deck-1/field-1", "B6"))));
    bench.settle();
    assertThat(robot.lookup(".inspector-name").queryAs(Label.class).getText()).isEqualTo("B6");
    bench.until(
        "the section follows",
        () -> bench.model().drawings().sectionName().get().startsWith("B6 "));
  }

  @Test
  void aFixIsAppliedAndAFindingAcceptedForAReason(FxRobot robot) throws IOException {
    Result before = open(robot, "pine-deck");
    robot.clickOn("Set the fall to 1:64");
    Result after = bench.whole();
    assertThat(after.layout().kit().fall()).isGreaterThan(before.layout().kit().fall());
    robot.clickOn("#findings-filter").write("single-outlet");
    robot.clickOn("Accept …");
    robot.clickOn("#accept-reason").write("one is enough here").push(KeyCode.ENTER);
    bench.until("accepted", () -> bench.model().session().decisions().get().accepted().size() == 1);
    assertThat(bench.model().session().decisions().get().accepted().values())
        .extracting(Acceptance::reason)
        .containsExactly("one is enough here");
    bench.until("shown", () -> robot.lookup("Reopen").tryQuery().isPresent());
  }

  @Test
  void everythingCanBeFoundAndDoneFromTheKeyboard(FxRobot robot) throws IOException {
    open(robot, "pine-deck");
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("kit vinyl").push(KeyCode.ENTER);
    assertThat(bench.whole().layout().kit().id()).isEqualTo("rigid-vinyl");
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("dark").push(KeyCode.ENTER);
    assertThat(bench.view().getStyleClass()).contains("tone-dark");
    robot.push(KeyCode.SHORTCUT, KeyCode.DIGIT2);
    robot.push(KeyCode.SHORTCUT, KeyCode.DIGIT5);
    bench.until("the takeoff", () -> robot.lookup("#takeoff-table").tryQuery().isPresent());
  }

  @Test
  void aModelThatCannotBeReadSaysWhyAndNothingOfTheOneBeforeStays(FxRobot robot)
      throws IOException {
    open(robot, "pine-deck");
    bench.answers.open =
        Optional.of(Files.writeString(bench.folder.resolve("bad.ifc"), "this is no model"));
    robot.push(KeyCode.SHORTCUT, KeyCode.O);
    bench.until("a problem", () -> bench.model().session().problem().get().isPresent());
    assertThat(robot.lookup("#status-words").queryAs(Label.class).getText()).contains("bad.ifc");
    bench.settle();
    assertThat(robot.lookup(".instead").queryAs(Label.class).getText())
        .contains("bad.ifc, line 1, column 1")
        .contains("Choose an IFC file");
    assertThat(bench.model().picture().image().get()).isEmpty();
    assertThat(bench.model().drawings().plan().image().get()).isEmpty();
    assertThat(bench.model().picture().pick(100, 100)).isEmpty();
  }

  @Test
  void everythingThatCanBePressedHasANameForAScreenReader(FxRobot robot) throws IOException {
    open(robot, "pine-deck");
    robot
        .lookup(".button")
        .queryAllAs(Button.class)
        .forEach(
            b ->
                assertThat(
                        b.getText() + (b.getAccessibleText() == null ? "" : b.getAccessibleText()))
                    .as("%s", b)
                    .isNotBlank());
    for (String id :
        new String[] {"#picture3d", "#outline", "#findings", "#fall", "#kit", "#deck", "#rain"}) {
      javafx.scene.Node node = robot.lookup(id).queryAs(javafx.scene.Node.class);
      assertThat(node.getAccessibleText()).as(id).isNotBlank();
      assertThat(node.isFocusTraversable()).as(id).isTrue();
    }
  }
}
