package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** Models that were open before are opened again while another one is open. */
@ExtendWith(ApplicationExtension.class)
class RecentFilesTest {
  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private Optional<Path> open() {
    return bench.model().session().model().get();
  }

  private static List<MenuItem> menu(FxRobot robot) {
    return robot.lookup("#recent").queryAs(MenuButton.class).getItems();
  }

  private void knows(int there, int gone) {
    bench.until(
        there + " there and " + gone + " gone",
        () ->
            bench.model().recent().files().get().size() == there + gone
                && bench.model().recent().files().get().stream().filter(r -> r.there()).count()
                    == there);
  }

  @Test
  void aModelIsOpenedAgainFromTheMenuAndByACommand(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    Path balcony = bench.sample("harbour-balcony");
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
    robot.interact(() -> bench.host.open(balcony));
    bench.whole();
    knows(1, 0);

    robot.clickOn("#recent").clickOn("#recent-0");
    assertThat(open()).contains(pine);
    bench.whole();
    knows(1, 0);
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("open again harbour").push(KeyCode.ENTER);
    assertThat(open()).contains(balcony);
    bench.whole();
  }

  @Test
  void aModelThatIsGoneIsGreyInPlainWordsAndCanBeForgotten(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    Path balcony = bench.sample("harbour-balcony");
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
    robot.interact(() -> bench.host.open(balcony));
    bench.whole();
    Files.delete(pine);
    robot.clickOn("#recent");
    knows(0, 1);
    assertThat(menu(robot).get(0).isDisable()).isTrue();
    assertThat(menu(robot).get(0).getText()).contains("pine-deck.ifc").contains("no longer there");
    robot.push(KeyCode.ESCAPE);
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("open again").push(KeyCode.ENTER);
    assertThat(open()).as("it cannot be done").contains(balcony);
    robot.push(KeyCode.ESCAPE);

    robot.interact(() -> bench.model().recent().forgetGone());
    knows(0, 0);
    assertThat(menu(robot)).isEmpty();
    assertThat(bench.model().settings().get().recent()).containsExactly(balcony.toString());
  }
}
