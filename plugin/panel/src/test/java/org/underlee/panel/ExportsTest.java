package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.panel.model.FileKind;
import org.underlee.panel.model.Result;
import org.underlee.report.packet.PacketBuilder;
import org.underlee.report.packet.PacketFiles;
import org.underlee.report.packet.Paper;
import org.underlee.report.packet.Writing;
import org.underlee.units.Lengths.UnitSystem;

/** What leaves the panel is what its name says, or is not written. */
@ExtendWith(ApplicationExtension.class)
class ExportsTest {
  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private Result open(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    return bench.whole();
  }

  private void until(String said) {
    bench.until(said, () -> bench.model().saving().message().get().startsWith(said));
  }

  private static void command(FxRobot robot, String words) {
    robot.push(KeyCode.SHORTCUT, KeyCode.K).write(words).push(KeyCode.ENTER);
  }

  @Test
  void anEndingThatSaysNothingIsRefusedWithThosePossibleAndNothingIsWritten(FxRobot robot)
      throws IOException {
    open(robot);
    for (String name : new String[] {"takeoff.pdf", "takeoff"}) {
      Path target = bench.folder.resolve(name);
      bench.answers.save = Optional.of(target);
      robot.push(KeyCode.SHORTCUT, KeyCode.E);
      bench.until("refused", () -> bench.model().saving().problem().get().isPresent());
      assertThat(robot.lookup("#status-words").queryAs(Label.class).getText())
          .contains(name + " was not written")
          .contains(".xlsx or .csv or .json");
      assertThat(target).doesNotExist();
    }
    assertThat(bench.answers.offered).isEqualTo(FileKind.TAKEOFFS);

    Path stripped = bench.folder.resolve("stripped.zip");
    robot.interact(() -> bench.model().saving().strip(stripped));
    bench.until(
        "refused",
        () ->
            bench
                .model()
                .saving()
                .problem()
                .get()
                .filter(p -> p.words().contains("stripped.zip") && p.words().endsWith(".ifc."))
                .isPresent());
    assertThat(stripped).doesNotExist();

    Path json = bench.folder.resolve("TAKEOFF.JSON");
    bench.answers.save = Optional.of(json);
    robot.push(KeyCode.SHORTCUT, KeyCode.E);
    until("Wrote TAKEOFF");
    assertThat(Files.readString(json)).startsWith("{");
    assertThat(bench.model().saving().problem().get()).isEmpty();
  }

  @Test
  void thePacketIsThatOfTheCommandInEitherLanguage(FxRobot robot) throws IOException {
    Result whole = open(robot);
    Path folder = bench.folder.resolve("site/packet");
    bench.answers.fill = Optional.of(folder);
    robot.push(KeyCode.SHORTCUT, KeyCode.P);
    until("Wrote");
    assertSame(folder, whole, "en");
    assertThat(bench.model().saving().message().get()).doesNotContain("in place of");

    command(robot, "packet Spanish");
    until("Wrote");
    bench.until(
        "again", () -> bench.model().saving().message().get().contains("in place of files"));
    assertSame(folder, whole, "es");
  }

  private static void assertSame(Path folder, Result whole, String language) throws IOException {
    Map<String, byte[]> files =
        PacketFiles.of(
            PacketBuilder.of(
                whole.design().orElseThrow(), new Writing(UnitSystem.IMPERIAL, language)),
            Paper.LETTER);
    assertThat(files).containsKeys("packet.pdf", "packet.html");
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      assertThat(Files.readAllBytes(folder.resolve(file.getKey())))
          .as(file.getKey())
          .isEqualTo(file.getValue());
    }
  }

  @Test
  void thePacketWritesOverNothingThatWasRead(FxRobot robot) throws IOException {
    Path folder = Files.createDirectories(bench.folder.resolve("packet"));
    Path page = folder.resolve("packet.html");
    String drawn = Files.readString(Bench.ROOT.resolve("samples/pine-deck/services.ifc"));
    // where the pipe is drawn, nothing could be laid out
    Files.writeString(page, drawn.replace("2352.0400", "2252.0400"));
    byte[] before = Files.readAllBytes(page);
    open(robot);
    robot.interact(() -> bench.model().session().decide("services", d -> d.withService(page)));
    bench.whole();
    robot.interact(() -> bench.model().forTheSite().exportPacket(folder, "en"));
    bench.until("refused", () -> bench.model().saving().problem().get().isPresent());
    assertThat(bench.model().saving().problem().get().orElseThrow().message())
        .contains("(a model of services)");
    assertThat(Files.readAllBytes(page)).isEqualTo(before);
    assertThat(folder.resolve("packet.pdf")).doesNotExist();
  }

  @Test
  void theChecklistHoldsEveryQuestionForTheSite(FxRobot robot) throws IOException {
    Result whole = open(robot);
    Path list = bench.folder.resolve("list.txt");
    bench.answers.save = Optional.of(list);
    command(robot, "checklist");
    until("Wrote list.txt");
    String text = Files.readString(list, StandardCharsets.UTF_8);
    assertThat(whole.design().orElseThrow().checks().questions())
        .isNotEmpty()
        .allSatisfy(q -> assertThat(text).contains("[ ] " + q.text()));
  }
}
