package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.panel.model.Decisions;
import org.underlee.panel.model.Memory;
import org.underlee.panel.model.Result;

/** A table of capacities, a kit and services of the user's own: used, kept, and never spoilt. */
@ExtendWith(ApplicationExtension.class)
class OwnFilesTest {
  private static final String TABLE =
      """
      {
        "schema": "underlee/own-capacities/1",
        "tables": [
          {
            "id": "our-county-leaders",
            "use": "round downspout",
            "code": "Our county",
            "edition": "2024",
            "table": "Table 7",
            "unit": "gpm",
            "source": "the printed code, page 112",
            "rows": [
              {"sizeInches": 2, "fallInchesPerFoot": 0, "capacity": 14},
              {"sizeInches": 3, "fallInchesPerFoot": 0, "capacity": 42}
            ]
          }
        ],
        "shownOnly": []
      }
      """;

  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(bench.folder.resolve(name), text);
  }

  private static String rated(FxRobot robot) {
    return robot.lookup("#rated-by").queryAs(Label.class).getText();
  }

  private static boolean isRatedByOwn(Result result) {
    return result.findings().stream().anyMatch(f -> f.rule().id().equals("rated-by-own-tables"));
  }

  @Test
  void aTableOfTheUsersOwnIsChosenToldUndoneAndKept(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    assertThat(isRatedByOwn(bench.whole())).isFalse();
    robot.clickOn("#tab-water");
    assertThat(rated(robot)).isEqualTo("Rated by the program's tables.");

    bench.answers.open = Optional.of(file("slip.json", TABLE.replace("\"gpm\"", "\"buckets\"")));
    robot.clickOn("#capacity-own");
    bench.until("a slip", () -> bench.model().ratings().problem().get().isPresent());
    assertThat(rated(robot)).contains("slip.json").contains("buckets");
    assertThat(robot.lookup("#rated-by").queryAs(Label.class).getStyleClass()).contains("slip");
    assertThat(bench.model().ratings().isOwn()).as("nothing is decided").isFalse();

    bench.answers.open = Optional.of(file("our-county.json", TABLE));
    robot.clickOn("#capacity-own");
    bench.until("an own table", () -> bench.model().ratings().isOwn());
    assertThat(isRatedByOwn(bench.whole())).isTrue();
    assertThat(rated(robot)).contains("Our county 2024, Table 7").contains("our-county.json");

    robot.interact(() -> bench.view().requestFocus());
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    assertThat(isRatedByOwn(bench.whole())).isFalse();
    robot.push(KeyCode.SHORTCUT, KeyCode.Y);
    assertThat(isRatedByOwn(bench.whole())).isTrue();

    Memory again = new Memory(bench.folder.resolve("state"));
    bench.until(
        "kept",
        () ->
            again
                .decisions(pine)
                .flatMap(d -> d.wishes().tables())
                .filter(t -> t.text().equals(TABLE))
                .isPresent());
    robot.clickOn("#capacity-off");
    assertThat(isRatedByOwn(bench.whole())).isFalse();
  }

  private static Path builtInKit() {
    return Bench.ROOT.resolve(
        "core/src/main/resources/org/underlee/kit/" + Decisions.FIRST.kit() + ".json");
  }

  @Test
  void aKitOfTheUsersOwnIsChosenToldUndoneReadAgainAndKept(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    String text = Files.readString(builtInKit());
    String ours = text.replace("\"id\": \"" + Decisions.FIRST.kit() + "\"", "\"id\": \"our-shop\"");
    robot.interact(() -> bench.host.open(pine));
    bench.whole();

    bench.answers.open = Optional.of(file("slip.json", ours.replace("railLegMm", "railLeg")));
    robot.clickOn("#own-kit");
    bench.until("a slip", () -> bench.model().ownKit().problem().get().isPresent());
    assertThat(robot.lookup("#slip").queryAs(Label.class).getText())
        .contains("slip.json")
        .contains("railLeg");
    assertThat(bench.model().session().decisions().get().kit()).isEqualTo(Decisions.FIRST.kit());

    Path kit = file("our-shop.json", ours);
    bench.answers.open = Optional.of(kit);
    robot.clickOn("#own-kit");
    bench.until(
        "chosen", () -> bench.model().session().decisions().get().kit().equals(kit.toString()));
    assertThat(bench.whole().layout().kit().id()).isEqualTo("our-shop");
    assertThat(robot.lookup("#slip").queryAs(Label.class).getText()).isEmpty();
    assertThat(robot.lookup("#kit .list-cell").queryAllAs(Labeled.class))
        .extracting(Labeled::getText)
        .contains("our-shop.json (your own)");
    Memory again = new Memory(bench.folder.resolve("state"));
    bench.until(
        "kept",
        () -> again.decisions(pine).filter(d -> d.kit().equals(kit.toString())).isPresent());

    robot.interact(() -> bench.view().requestFocus());
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    assertThat(bench.whole().layout().kit().id()).isEqualTo(Decisions.FIRST.kit());
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write("our-shop").push(KeyCode.ENTER);
    assertThat(bench.whole().layout().kit().id()).as("by a command").isEqualTo("our-shop");

    file("our-shop.json", ours.replace("\"our-shop\"", "\"our-new-shop\""));
    robot.clickOn("#own-kit");
    bench.until(
        "read again",
        () ->
            bench
                .model()
                .session()
                .result()
                .get()
                .filter(r -> r.layout().kit().id().equals("our-new-shop"))
                .isPresent());
    bench.whole();
  }

  @Test
  void aKitThatIsGoneIsToldAndAnotherOneOpensTheModel(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    Path gone = bench.folder.resolve("gone.json");
    new Memory(bench.folder.resolve("state")).keep(pine, Decisions.FIRST.withKit(gone.toString()));
    robot.interact(() -> bench.host.open(pine));
    bench.until("told", () -> bench.model().session().problem().get().isPresent());
    assertThat(bench.model().session().problem().get().orElseThrow().message())
        .contains("gone.json")
        .contains("no such kit");
    bench.answers.open = Optional.of(builtInKit());
    robot.clickOn("#own-kit");
    assertThat(bench.whole().layout().kit().id()).isEqualTo(Decisions.FIRST.kit());
  }

  @Test
  void nothingThatWasReadIsWrittenOver(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    Path roles = file("pine-deck.roles.json", "");
    Files.delete(roles);
    Path services = bench.folder.resolve("services.ifc");
    Files.copy(Bench.ROOT.resolve("samples/pine-deck/services.ifc"), services);
    Path kit = bench.folder.resolve("our-kit.json");
    Files.copy(
        Bench.ROOT.resolve(
            "core/src/main/resources/org/underlee/kit/" + Decisions.FIRST.kit() + ".json"),
        kit);
    Path table = file("our-county.json", TABLE);
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
    robot.interact(
        () -> {
          bench.model().session().decide("services", d -> d.withService(services));
          bench.model().session().decide("kit", d -> d.withKit(kit.toString()));
          bench.model().ratings().choose(table);
        });
    bench.until("an own table", () -> bench.model().ratings().isOwn());
    bench.whole();

    Map<Path, String> read = new LinkedHashMap<>();
    read.put(pine, "the open model");
    read.put(services, "a model of services");
    read.put(kit, "the kit");
    read.put(table, "the table of capacities");
    for (Map.Entry<Path, String> one : read.entrySet()) {
      byte[] before = Files.readAllBytes(one.getKey());
      for (Runnable save : saves(one.getKey())) {
        robot.interact(save);
        bench.until(
            "refused: " + one,
            () ->
                bench
                    .model()
                    .saving()
                    .problem()
                    .get()
                    .filter(p -> p.message().contains("(" + one.getValue() + ")"))
                    .isPresent());
        assertThat(Files.readAllBytes(one.getKey())).isEqualTo(before);
        Path free = bench.folder.resolve("free.csv");
        robot.interact(() -> bench.model().saving().export(free));
        bench.until(
            "a free name is written", () -> bench.model().saving().problem().get().isEmpty());
      }
    }
  }

  /** Every way in which the panel writes a file whose name the user chooses. */
  private List<Runnable> saves(Path target) {
    return List.of(
        () -> bench.model().saving().write(target, false),
        () -> bench.model().saving().export(target),
        () -> bench.model().saving().strip(target));
  }
}
