package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.panel.model.Decisions;
import org.underlee.panel.model.Memory;
import org.underlee.panel.model.Result;

/** Models of services are seen, added once and removed, and are no dead end when they are gone. */
@ExtendWith(ApplicationExtension.class)
class ServiceFilesTest {
  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private Path services() throws IOException {
    String drawn = Files.readString(Bench.ROOT.resolve("samples/pine-deck/services.ifc"));
    // where the pipe is drawn, nothing could be laid out
    return Files.writeString(
        bench.folder.resolve("services.ifc"), drawn.replace("2352.0400", "2252.0400"));
  }

  private static int listed(FxRobot robot) {
    return robot.lookup("#service-files").queryAs(Pane.class).getChildren().size();
  }

  private static String slip(FxRobot robot) {
    return robot.lookup("#service-slip").queryAs(Label.class).getText();
  }

  private List<String> decided() {
    return bench.model().session().decisions().get().services();
  }

  @Test
  void aModelOfServicesIsListedNotAddedTwiceRemovedAndTakenBack(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    Path services = services();
    robot.interact(() -> bench.host.open(pine));
    Result without = bench.whole();
    robot.clickOn("#tab-services");
    bench.answers.open = Optional.of(services);
    robot.clickOn("#add-services");
    Result around = bench.whole();
    assertThat(decided()).containsExactly(services.toString());
    assertThat(around.survey().services()).hasSize(1);
    assertThat(listed(robot)).isEqualTo(1);

    bench.answers.open = Optional.of(bench.folder.resolve("state/../services.ifc"));
    robot.clickOn("#add-services");
    assertThat(slip(robot)).contains("services.ifc is among the services already");
    bench.answers.open = Optional.of(pine);
    robot.clickOn("#add-services");
    assertThat(slip(robot)).contains("is the open model itself");
    assertThat(decided()).hasSize(1);

    robot.clickOn(".remove-service");
    bench.until("removed", () -> decided().isEmpty());
    assertThat(bench.whole().layout()).isEqualTo(without.layout());
    assertThat(listed(robot)).isZero();
    assertThat(slip(robot)).isEmpty();
    robot.interact(() -> bench.view().requestFocus());
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    bench.until("taken back", () -> decided().size() == 1);
    assertThat(bench.whole().layout()).isEqualTo(around.layout());
  }

  @Test
  void aModelOpensWithoutServicesThatAreGoneOrBrokenAndSaysSo(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    Path gone = bench.folder.resolve("gone.ifc");
    Path broken = Files.writeString(bench.folder.resolve("broken.ifc"), "no model at all");
    Path services = services();
    new Memory(bench.folder.resolve("state"))
        .keep(pine, Decisions.FIRST.withService(gone).withService(broken).withService(services));
    robot.interact(() -> bench.host.open(pine));
    Result opened = bench.whole();
    assertThat(opened.survey().services()).hasSize(1);
    assertThat(robot.lookup("#status-words").queryAs(Label.class).getText())
        .contains("gone.ifc: there is no such file")
        .contains("broken.ifc");

    robot.clickOn("#tab-services");
    assertThat(listed(robot)).isEqualTo(3);
    bench.until("looked", () -> bench.model().services().coordination().get().isPresent());
    assertThat(bench.model().services().state()).endsWith("in 1 model of services.");
    assertThat(bench.model().serviceFiles().files())
        .filteredOn(f -> f.notRead().isPresent())
        .extracting(f -> f.name())
        .containsExactly("gone.ifc", "broken.ifc");
    robot.interact(
        () ->
            bench.model().serviceFiles().files().stream()
                .filter(f -> f.notRead().isPresent())
                .forEach(bench.model().serviceFiles()::remove));
    bench.until("told no more", () -> bench.model().session().leftOut().get().isEmpty());
    Result after = bench.whole();
    assertThat(after.layout()).isEqualTo(opened.layout());
    bench.until(
        "nothing is said below",
        () -> robot.lookup("#status-words").queryAs(Label.class).getText().isEmpty());
  }

  private String told() {
    return bench.model().dropped().problem().get().map(p -> p.words()).orElse("");
  }

  @Test
  void whatIsDroppedIsOpenedOrAddedWhereServicesAreInSightAndTheRestIsTold(FxRobot robot)
      throws IOException {
    Path pine = bench.sample("pine-deck");
    Path balcony = bench.sample("harbour-balcony");
    Path notes = Files.writeString(bench.folder.resolve("notes.txt"), "no model");
    Path services = services();
    robot.interact(() -> bench.view().take(List.of(notes)));
    assertThat(bench.model().session().model().get()).isEmpty();
    assertThat(told()).contains("notes.txt was dropped and is no model").contains(".ifc");

    robot.interact(() -> bench.view().take(List.of(notes, pine, balcony)));
    assertThat(bench.model().session().model().get()).contains(pine);
    assertThat(told()).contains("notes.txt");
    robot.interact(() -> bench.view().take(List.of(pine, balcony)));
    assertThat(told()).contains("harbour-balcony.ifc was left").contains("Services");
    Result plain = bench.whole();
    assertThat(robot.lookup("#status-words").queryAs(Label.class).getText()).isEqualTo(told());

    robot.clickOn("#tab-services");
    robot.interact(() -> bench.view().take(List.of(services, services, pine)));
    bench.until("added once", () -> decided().equals(List.of(services.toString())));
    assertThat(bench.model().session().model().get()).as("still open").contains(pine);
    assertThat(slip(robot)).contains("is the open model itself");
    assertThat(bench.whole().survey().services()).hasSize(1);

    robot.clickOn("#tab-findings");
    robot.interact(() -> bench.view().take(List.of(balcony)));
    assertThat(bench.model().session().model().get()).contains(balcony);
    assertThat(told()).isEmpty();
    assertThat(bench.whole().survey().framing()).isNotEqualTo(plain.survey().framing());
  }
}
