package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.Tone;
import org.underlee.panel.model.Viewpoint;

/** Takes the pictures of the pages; {@code -Dunderlee.rewrite=true} puts them into docs/images. */
@ExtendWith(ApplicationExtension.class)
class ScreenshotTest {
  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private static Path image(String name) {
    Path folder =
        Boolean.getBoolean("underlee.rewrite")
            ? Bench.ROOT.resolve("docs/images")
            : Path.of("target/images");
    return folder.resolve(name + ".png");
  }

  /** What opens over the panel or only now and then. */
  @Test
  void whatIsSeenNowAndThenCanBeShown(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    Path services = bench.folder.resolve("services.ifc");
    // the water pipe moved to where no pan can be hung
    String drawn = Files.readString(Bench.ROOT.resolve("samples/pine-deck/services.ifc"));
    Files.writeString(services, drawn.replace("2352.0400", "2252.0400"));
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("outlet");
    bench.shot(robot, image("views/now-and-then-commands"));
    robot.push(KeyCode.ESCAPE);
    robot.clickOn("#write");
    bench.shot(robot, robot.listTargetWindows(), image("views/now-and-then-write"));
    robot.clickOn("#write-now");
    bench.until("written", () -> bench.model().saving().message().get().startsWith("Wrote"));
    robot.interact(
        () -> bench.model().session().decide("Add services", d -> d.withService(services)));
    bench.whole();
    robot.clickOn("#tab-services");
    bench.until("looked at", () -> !bench.model().services().busy().get());
    robot.interact(
        () -> robot.lookup("#services").queryAs(ListView.class).getSelectionModel().select(0));
    bench.shot(robot, image("views/now-and-then-services"));
    robot.interact(
        () -> bench.model().settings().set(bench.model().settings().get().withFontPercent(200)));
    robot.clickOn("#tab-findings");
    bench.shot(robot, image("views/now-and-then-large-letters"));
    robot.interact(
        () -> bench.model().settings().set(bench.model().settings().get().withFontPercent(100)));
    Path bad = Files.writeString(bench.folder.resolve("bad.ifc"), "this is no model");
    robot.interact(() -> bench.host.open(bad));
    bench.until("a problem", () -> bench.model().session().problem().get().isPresent());
    bench.shot(robot, image("views/now-and-then-problem"));
    assertThat(Files.size(image("views/now-and-then-services"))).isGreaterThan(10_000);
  }

  @Test
  void everyViewOfTheSamplesCanBeShown(FxRobot robot) throws IOException {
    bench.shot(robot, image("panel-welcome"));
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
    robot.interact(() -> bench.model().select(Set.of(new Item.OfBay("deck-1/field-1", "B6"))));
    bench.shot(robot, image("panel-pine-deck"));
    robot.clickOn("#labels").clickOn("#section-box").clickOn("#section-selected");
    bench.shot(robot, image("panel-section-box"));
    robot.clickOn("#labels").clickOn("#section-box");
    robot.clickOn("#tab-plan");
    robot.clickOn("#tab-takeoff");
    bench.shot(robot, image("panel-plan"));
    robot.clickOn("#tab-section");
    robot.clickOn("#tab-water");
    bench.shot(robot, image("panel-section"));
    robot.interact(() -> bench.model().setTone(Tone.DARK));
    Path terrace = bench.sample("hillside-terrace");
    robot.interact(() -> bench.host.open(terrace));
    bench.whole();
    robot.clickOn("#tab-picture");
    robot.clickOn("#tab-findings");
    robot.interact(() -> bench.model().picture().look(Viewpoint.FROM_BELOW));
    bench.shot(robot, image("panel-dark"));
    robot.clickOn("#tab-section");
    bench.shot(robot, image("panel-dark-section"));
    robot.interact(() -> bench.model().setTone(Tone.CONTRAST));
    Path balcony = bench.sample("harbour-balcony");
    robot.interact(() -> bench.host.open(balcony));
    bench.whole();
    robot.clickOn("#tab-plan");
    bench.shot(robot, image("panel-contrast"));
    assertThat(Files.size(image("panel-contrast"))).isGreaterThan(10_000);
  }

  /** The whole album, for the pages alone. */
  @Test
  @EnabledIfSystemProperty(named = "underlee.rewrite", matches = "true")
  void everyViewOfEverySampleInLightAndDark(FxRobot robot) throws IOException {
    robot.interact(
        () -> {
          bench.stage.setWidth(1280);
          bench.stage.setHeight(800);
        });
    for (String sample : List.of("pine-deck", "harbour-balcony", "hillside-terrace")) {
      Path model = bench.sample(sample);
      robot.interact(() -> bench.host.open(model));
      bench.whole();
      for (Tone tone : List.of(Tone.LIGHT, Tone.DARK)) {
        robot.interact(() -> bench.model().setTone(tone));
        String name = "views/" + sample + "-" + tone.name().toLowerCase(Locale.ROOT) + "-";
        view(robot, "picture", "findings", image(name + "picture-findings"));
        view(robot, "plan", "takeoff", image(name + "plan-takeoff"));
        view(robot, "section", "water", image(name + "section-water"));
        robot.clickOn("#tab-options").clickOn("#compare");
        bench.until("compared", () -> !bench.model().choices().busy().get());
        view(robot, "plan", "options", image(name + "plan-arrangements"));
        robot.clickOn("#tab-services");
        bench.until("looked at", () -> !bench.model().services().busy().get());
        view(robot, "picture", "services", image(name + "picture-services"));
      }
    }
    assertThat(image("views/pine-deck-dark-picture-services")).exists();
  }

  private void view(FxRobot robot, String above, String below, Path file) throws IOException {
    robot.clickOn("#tab-" + above).clickOn("#tab-" + below);
    bench.shot(robot, file);
  }
}
