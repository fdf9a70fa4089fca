package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.scene.control.Slider;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.Section.Axis;
import org.underlee.picture.Image;

/** The section box and the names in the 3-D picture, by mouse and by keys. */
@ExtendWith(ApplicationExtension.class)
class LookingIntoTest {
  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private void open(FxRobot robot) throws IOException {
    Path model = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(model));
    bench.whole();
    bench.settle();
  }

  private Image picture() {
    bench.settle();
    return bench.model().picture().image().get().orElseThrow();
  }

  private static Set<Integer> seen(Image image) {
    return Arrays.stream(image.ids()).boxed().collect(Collectors.toSet());
  }

  @Test
  void theSectionBoxIsOpenedCutWithKeysPutAroundABayAndClosed(FxRobot robot) throws IOException {
    open(robot);
    Set<Integer> all = seen(picture());
    assertThat(robot.lookup("#section-sides").query().isVisible()).isFalse();
    robot.clickOn("#section-box");
    assertThat(robot.lookup("#section-sides").query().isVisible()).isTrue();
    Slider side = robot.lookup("#section-across-from").queryAs(Slider.class);
    assertThat(side.getAccessibleText()).isEqualTo("Section box, kept across the joists, from");

    robot.interact(side::requestFocus);
    for (int i = 0; i < 20; i++) {
      robot.push(KeyCode.RIGHT);
    }
    assertThat(bench.model().picture().section().get().range(Axis.ACROSS).from())
        .isBetween(0.35, 0.45);
    Set<Integer> cut = seen(picture());
    assertThat(cut.size()).isBetween(5, all.size() - 1);

    robot.interact(() -> bench.model().select(Set.of(new Item.OfBay("deck-1/field-1", "B6"))));
    robot.clickOn("#section-selected");
    assertThat(seen(picture()).size()).isLessThan(cut.size());
    robot.clickOn("#section-whole").clickOn("#view-from-below");
    assertThat(seen(picture()).size()).isGreaterThan(cut.size());
    robot.push(KeyCode.SHORTCUT, KeyCode.I);
    assertThat(robot.lookup("#section-box").queryAs(ToggleButton.class).isSelected()).isFalse();
    assertThat(robot.lookup("#section-sides").query().isVisible()).isFalse();
    robot.clickOn("#view-from-below");
    assertThat(seen(picture())).isEqualTo(all);
  }

  @Test
  void namesAreWrittenAndTakenAwayAndWhatCanBePickedStays(FxRobot robot) throws IOException {
    open(robot);
    Image plain = picture();
    robot.clickOn("#labels");
    Image named = picture();
    assertThat(named.ids()).isEqualTo(plain.ids());
    assertThat(named.pixels()).isNotEqualTo(plain.pixels());

    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("names of bays").push(KeyCode.ENTER);
    assertThat(picture().pixels()).isEqualTo(plain.pixels());
    assertThat(robot.lookup("#labels").queryAs(ToggleButton.class).isSelected()).isFalse();
    assertThat(robot.lookup("#labels").query().getAccessibleText())
        .isEqualTo("Names of bays and pieces in 3-D: on or off");
  }
}
