package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonType;
import javafx.scene.control.DialogPane;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.text.Text;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.panel.model.FindingList;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.Orbit;
import org.underlee.panel.model.Result;
import org.underlee.panel.model.Table;

/** Findings are read in full, gone to, put right and answered for; and all lists follow. */
@ExtendWith(ApplicationExtension.class)
class FindingsPanelTest {
  private static final PseudoClass ABOUT = PseudoClass.getPseudoClass("about");

  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private Result open(FxRobot robot) throws IOException {
    Path model = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(model));
    Result whole = bench.whole();
    bench.settle();
    return whole;
  }

  private List<ListCell<?>> cells(FxRobot robot) {
    return robot.lookup("#findings").lookup(".list-cell").queryAllAs(ListCell.class).stream()
        .<ListCell<?>>map(c -> c)
        .filter(c -> c.getItem() instanceof FindingList.Row)
        .toList();
  }

  private ListCell<?> cell(FxRobot robot, String rule) {
    return cells(robot).stream()
        .filter(
            c ->
                c.getItem() instanceof FindingList.Row row
                    && row.finding().rule().id().equals(rule))
        .findFirst()
        .orElseThrow();
  }

  private void type(FxRobot robot, String filter) {
    TextField field = robot.lookup("#findings-filter").query();
    robot.interact(() -> field.setText(filter));
    bench.settle();
  }

  @Test
  void aRowIsAsHighAsItsWordsNeed(FxRobot robot) throws IOException {
    open(robot);
    robot.interact(() -> bench.stage.setWidth(1000));
    bench.settle();
    type(robot, "net-fall-low");
    ListCell<?> cell = cell(robot, "net-fall-low");
    List<Label> labels =
        cell.lookupAll(".label").stream()
            .filter(Label.class::isInstance)
            .map(Label.class::cast)
            .filter(l -> !l.getText().isEmpty())
            .toList();
    assertThat(labels).hasSizeGreaterThanOrEqualTo(2);
    for (Label label : labels) {
      Text shown = (Text) label.lookup(".text");
      assertThat(shown.getText()).isEqualTo(label.getText());
    }
    double foot = cell.localToScene(cell.getBoundsInLocal()).getMaxY();
    for (Label label : labels) {
      assertThat(label.getHeight()).isGreaterThan(label.prefHeight(label.getWidth()) - 1);
      assertThat(label.localToScene(label.getBoundsInLocal()).getMaxY()).isLessThan(foot + 1);
    }
  }

  @Test
  void theFindingInHandIsReadAndPutRightInTheInspectorWithTheKeyboard(FxRobot robot)
      throws IOException {
    Result before = open(robot);
    robot.clickOn(cell(robot, "net-fall-low").lookup(".quiet"));
    assertThat(robot.lookup("#inspector-finding").queryAs(Label.class).getText())
        .isEqualTo("net-fall-low");
    FindingList.Row row = bench.model().findings().inHand().orElseThrow();
    for (String told : List.of(row.message(), row.advice(), "Then: " + row.price().orElseThrow())) {
      assertThat(robot.lookup("#inspector").lookup(told).tryQuery()).as(told).isPresent();
    }
    Button fix = robot.lookup("#inspector-buttons").lookup(".fix").queryButton();
    assertThat(fix.getText()).isEqualTo("Set the fall to 1:64");
    robot.interact(fix::requestFocus);
    robot.push(KeyCode.SPACE);
    assertThat(bench.whole().layout().kit().fall()).isGreaterThan(before.layout().kit().fall());
  }

  @Test
  void aFindingChosenAgainIsGoneToAgain(FxRobot robot) throws IOException {
    open(robot);
    type(robot, "single-outlet");
    Node words = cell(robot, "single-outlet").lookup(".quiet");
    robot.clickOn(words);
    Orbit first = bench.model().picture().orbit().orElseThrow();
    Orbit away = first.moved(5, 5);
    robot.interact(() -> bench.model().picture().move(away));
    robot.clickOn(words);
    assertThat(bench.model().picture().orbit()).isNotEqualTo(java.util.Optional.of(away));
    robot.interact(() -> bench.model().picture().move(away));
    robot.push(KeyCode.SHORTCUT, KeyCode.J);
    assertThat(bench.model().picture().orbit()).isNotEqualTo(java.util.Optional.of(away));
  }

  @Test
  void tablesAndFindingsFollowWhatIsSelectedElsewhere(FxRobot robot) throws IOException {
    Result result = open(robot);
    robot.clickOn("#tab-takeoff").clickOn("#takeoff-show-2");
    TableView<?> cuts = robot.lookup("#takeoff-table").queryAs(TableView.class);
    String pan =
        result.layout().parts().stream()
            .filter(p -> p.id().contains("/B3/"))
            .map(p -> p.id())
            .findFirst()
            .orElseThrow();
    Item.OfPart part = new Item.OfPart(pan);
    robot.interact(() -> bench.model().select(Set.of(part)));
    assertThat(cuts.getSelectionModel().getSelectedItems()).hasSize(1);
    assertThat(((Table.Line) cuts.getSelectionModel().getSelectedItem()).items()).contains(part);
    robot.interact(() -> cuts.getSelectionModel().clearAndSelect(0));
    Table.Line line = (Table.Line) cuts.getItems().get(0);
    assertThat(bench.model().selection().get()).containsExactlyElementsOf(line.items());

    robot.clickOn("#tab-findings");
    robot.interact(() -> bench.model().select(Set.of(new Item.OfField("deck-1/field-1"))));
    bench.settle();
    assertThat(cell(robot, "net-fall-low").getPseudoClassStates()).contains(ABOUT);
    robot.interact(() -> bench.model().select(Set.of()));
    bench.settle();
    assertThat(cells(robot)).noneMatch(c -> c.getPseudoClassStates().contains(ABOUT));
  }

  @Test
  void nothingIsAcceptedWithoutAReasonAndWhatIsAcceptedIsReopenedWithOneButton(FxRobot robot)
      throws IOException {
    open(robot);
    type(robot, "single-outlet");
    robot.clickOn(cell(robot, "single-outlet").lookup(".accept"));
    TextField reason = robot.lookup("#accept-reason").query();
    Button ok = (Button) ((DialogPane) reason.getScene().getRoot()).lookupButton(ButtonType.OK);
    assertThat(ok.isDisabled()).isTrue();
    robot.interact(() -> reason.setText("  "));
    assertThat(ok.isDisabled()).isTrue();
    robot.interact(() -> reason.setText("one is enough"));
    robot.interact(ok::fire);
    bench.whole();
    bench.settle();
    assertThat(heads(robot)).containsExactly("Accepted (1)");
    robot.clickOn(cell(robot, "single-outlet").lookup(".reopen"));
    bench.whole();
    bench.settle();
    assertThat(heads(robot)).containsExactly("Warnings (1)");
  }

  private static List<String> heads(FxRobot robot) {
    ListView<?> list = robot.lookup("#findings").queryAs(ListView.class);
    return list.getItems().stream()
        .filter(FindingList.Head.class::isInstance)
        .map(FindingList.Head.class::cast)
        .map(h -> h.words() + " (" + h.count() + ")")
        .toList();
  }
}
