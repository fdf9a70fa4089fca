package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import javafx.scene.control.DialogPane;
import javafx.scene.control.Label;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.kordamp.ikonli.javafx.FontIcon;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.panel.model.Tone;

/** All that is shown grows with the letters. */
@ExtendWith(ApplicationExtension.class)
class LettersTest {
  private static final int LARGE = 200;

  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private void letters(FxRobot robot, int percent) {
    robot.interact(
        () -> {
          bench.model().settings().set(bench.model().settings().get().withFontPercent(percent));
        });
    bench.settle();
  }

  private static double icon(FxRobot robot) {
    return robot.lookup("#undo .icon").queryAs(FontIcon.class).getIconSize();
  }

  private static double firstColumn(FxRobot robot) {
    return robot.lookup("#takeoff-table").queryAs(TableView.class).getColumns().stream()
        .mapToDouble(c -> ((javafx.scene.control.TableColumn<?, ?>) c).getMinWidth())
        .sum();
  }

  @Test
  void signsColumnsTheListOfCommandsAndDialogsGrowToo(FxRobot robot) throws IOException {
    Path model = bench.sample("harbour-balcony");
    robot.interact(() -> bench.host.open(model));
    bench.whole();
    robot.push(KeyCode.SHORTCUT, KeyCode.DIGIT5);
    double icon = icon(robot);
    double columns = firstColumn(robot);
    letters(robot, LARGE);
    assertThat(icon(robot)).isEqualTo(2 * icon);
    assertThat(firstColumn(robot)).isEqualTo(2 * columns);
    robot.interact(() -> bench.model().setTone(Tone.CONTRAST));

    robot.push(KeyCode.SHORTCUT, KeyCode.K);
    bench.settle();
    Region list = robot.lookup("#commands").queryAs(Region.class);
    assertThat(list.getMaxWidth()).isGreaterThan(2 * 43 * 12);
    robot.push(KeyCode.ESCAPE);

    bench.selectAFinding(robot);
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("accept the selected finding");
    robot.push(KeyCode.ENTER);
    bench.until("asked", () -> robot.lookup("#accept-reason").tryQuery().isPresent());
    TextField reason = robot.lookup("#accept-reason").query();
    DialogPane ask = (DialogPane) reason.getScene().getRoot();
    assertThat(ask.getStyleClass()).contains("tone-contrast");
    assertThat(reason.getFont().getSize()).isEqualTo(26);
    assertThat(((Label) ask.lookup(".content.label")).getFont().getSize()).isEqualTo(26);
    robot.push(KeyCode.ESCAPE);
  }
}
