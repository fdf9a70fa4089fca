package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TableView;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.framing.Role;
import org.underlee.geom.Vec3;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.Memory;
import org.underlee.panel.model.Result;
import org.underlee.run.DeckRun;
import org.underlee.run.SurveyRequest;

/** What a person knows better than the model: roles, what must stay dry, a new export. */
@ExtendWith(ApplicationExtension.class)
class SetRightTest {
  private static final OptionalDouble SEAT = OptionalDouble.of(0.03);

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

  private static boolean hasRole(Result result, String globalId) {
    return result.survey().framing().roles().stream()
        .anyMatch(r -> r.member().id().equals(globalId));
  }

  @Test
  void aMemberThatIsNoFramingIsSaidSoWithTheKeyboardAndTakenBack(FxRobot robot) throws IOException {
    Result first = open(robot);
    String misread =
        first.survey().framing().roles().stream()
            .filter(r -> r.role() == Role.BLOCKING)
            .map(r -> r.member().id())
            .findFirst()
            .orElseThrow();
    robot.interact(() -> bench.model().select(Set.of(new Item.OfElement(misread))));
    robot.push(KeyCode.SHORTCUT, KeyCode.R);
    assertThat(robot.lookup("#role").queryAs(Node.class).isFocused()).isTrue();
    robot.clickOn("#role").type(KeyCode.END).type(KeyCode.ENTER);
    Result said = bench.whole();
    assertThat(said.decisions().roles()).isEqualTo(Map.of(misread, "not-framing"));
    assertThat(hasRole(said, misread)).isFalse();
    Path model = bench.model().session().model().get().orElseThrow();
    assertThat(new Memory(bench.folder.resolve("state")).decisions(model))
        .contains(said.decisions());
    assertThat(said.design().orElseThrow().provenance().told().values())
        .anyMatch(v -> v.contains(misread));

    robot.interact(() -> bench.view().requestFocus());
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    bench.until("undone", () -> bench.model().session().decisions().get().roles().isEmpty());
    assertThat(bench.whole().layout()).isEqualTo(first.layout());
  }

  @Test
  void onlyBaysOverWhatMustStayDryAreServed(FxRobot robot) throws IOException {
    Result all = open(robot);
    FieldBays field = all.survey().bays().get(0);
    Bay bay = field.bays().get(2);
    enter(robot, "no such room");
    bench.until(
        "a slip",
        () -> robot.lookup("#slip").queryAs(Label.class).getText().contains("no such room"));
    assertThat(bench.model().session().decisions().get().wishes().dryZone()).isEmpty();

    double v = bay.stretch().middle();
    Vec3 at =
        field
            .field()
            .frame()
            .apply(new Vec3((bay.left().centre(v) + bay.right().centre(v)) / 2, v, 0));
    enter(
        robot,
        String.format(
            Locale.ROOT,
            "%.3f,%.3f %.3f,%.3f %.3f,%.3f",
            at.x() - 0.05,
            at.y() - 0.05,
            at.x() + 0.05,
            at.y() - 0.05,
            at.x(),
            at.y() + 0.05));
    bench.until(
        "decided", () -> bench.model().session().decisions().get().wishes().dryZone().isPresent());
    Result one = bench.whole();
    assertThat(served(all)).hasSizeGreaterThan(1);
    assertThat(served(one)).containsExactly(bay.id());
  }

  private static void enter(FxRobot robot, String text) {
    robot.interact(() -> robot.lookup("#dry-zone").queryAs(Node.class).requestFocus());
    robot.push(KeyCode.SHORTCUT, KeyCode.A).write(text).push(KeyCode.ENTER);
  }

  private static Set<String> served(Result result) {
    return result.layout().parts().stream()
        .flatMap(p -> p.bay().stream())
        .collect(Collectors.toSet());
  }

  @Test
  void aNewExportTakesTheAssemblyOverAndSaysWhatBecameOfEachBay(FxRobot robot) throws IOException {
    Item.OfBay bay = new Item.OfBay("deck-1/field-1", "B2");
    open(robot);
    robot.interact(() -> bench.model().session().decide("decide", d -> d.turning(bay)));
    bench.until(
        "left open",
        () -> !served(bench.model().session().result().get().orElseThrow()).contains("B2"));
    Result opened = bench.whole();
    Path model = bench.model().session().model().get().orElseThrow();
    Path old = bench.folder.resolve("old.ifc");
    DeckRun.save(opened.design().orElseThrow(), model, old);
    robot.interact(() -> bench.model().session().undo());
    assertThat(bench.whole().decisions().wishes().leaveOpen()).isEmpty();
    bench.answers.open = Optional.of(old);
    robot.clickOn("#tab-changes").clickOn("#resync");
    bench.until("taken over", () -> !bench.model().resyncing().tables().isEmpty());
    long bays = opened.survey().bays().stream().mapToLong(f -> f.bays().size()).sum();
    assertThat(robot.lookup("#changes-table").queryAs(TableView.class).getItems())
        .hasSize((int) bays);
    assertThat(robot.lookup("#resync-words").queryAs(Label.class).getText())
        .isEqualTo("Bays: " + bays + " kept.");
    Result again = bench.whole();
    assertThat(again.decisions()).isEqualTo(opened.decisions());
    assertThat(again.layout()).isEqualTo(opened.layout());
    assertThat(bench.model().session().toUndo().get()).contains("Take over what was decided");

    robot.interact(() -> bench.model().session().decide("decide", d -> d.withSeat(SEAT)));
    assertThat(bench.model().resyncing().mayWrite()).isFalse();
    assertThat(robot.lookup("#resync-words").queryAs(Label.class).getText())
        .contains("decided otherwise since");
    robot.interact(() -> bench.model().session().undo());
    bench.whole();

    Path out = bench.folder.resolve("new.drained.ifc");
    bench.answers.save = Optional.of(out);
    robot.clickOn("#resync-write");
    bench.until("written", () -> bench.model().saving().message().get().startsWith("Wrote new"));
    assertThat(DeckRun.check(out, SurveyRequest.PLAIN, Optional.empty()).parts())
        .hasSize(DeckRun.check(old, SurveyRequest.PLAIN, Optional.empty()).parts().size());
    assertThat(Files.size(out)).isGreaterThan(Files.size(model));
  }
}
