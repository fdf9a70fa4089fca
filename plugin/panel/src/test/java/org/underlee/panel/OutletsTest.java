package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.finding.Finding;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.GutterPlaces;
import org.underlee.layout.PartKind;
import org.underlee.panel.model.Inspection;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.Result;
import org.underlee.picture.PlanPlaces;

/** A hand moves an outlet along its gutter, and keys do too. */
@ExtendWith(ApplicationExtension.class)
class OutletsTest {
  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private GutterPlaces gutter() {
    return bench
        .model()
        .session()
        .result()
        .get()
        .orElseThrow()
        .layout()
        .fields()
        .get(0)
        .gutter()
        .orElseThrow();
  }

  private Point2D onScreen(FxRobot robot, double metres) {
    Vec3 place =
        PlanPlaces.toWorld(bench.model().session().result().get().orElseThrow().survey().bays())
            .orElseThrow()
            .toLocal(gutter().at(metres));
    Vec2 pixel = bench.model().drawings().plan().pixel(new Vec2(place.x(), place.y()));
    Node plan = robot.lookup("#plan").queryAs(Node.class);
    return plan.localToScreen(pixel.x(), pixel.y());
  }

  private List<Double> asked() {
    return bench.model().session().decisions().get().wishes().outlets().of("deck-1/field-1");
  }

  @Test
  void anOutletIsDraggedSnapsToAPostMovesByKeysAndGoesBack(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
    robot.clickOn("#tab-plan");
    bench.until("a plan", () -> bench.model().drawings().plan().image().get().isPresent());
    bench.settle();
    double first = gutter().outlets().get(0);
    double free = gutter().length() / 2;

    robot
        .drag(onScreen(robot, first), MouseButton.PRIMARY)
        .moveTo(onScreen(robot, (first + free) / 2))
        .moveTo(onScreen(robot, free))
        .drop();
    Result moved = bench.whole();
    assertThat(asked()).hasSameSizeAs(gutter().outlets());
    assertThat(gutter().outlets()).anySatisfy(o -> assertThat(o).isCloseTo(free, within(0.13)));
    assertThat(bench.model().session().toUndo().get()).contains("Move an outlet");
    assertThat(inspected(moved)).anyMatch(r -> r.name().equals("Along the gutter"));

    double post = gutter().posts().get(0);
    robot
        .drag(onScreen(robot, gutter().outlets().get(0)), MouseButton.PRIMARY)
        .moveTo(onScreen(robot, post + 0.3))
        .moveTo(onScreen(robot, post + 0.05))
        .drop();
    bench.whole();
    assertThat(gutter().outlets().get(0)).isCloseTo(post, within(1e-4));

    robot.interact(() -> bench.view().requestFocus());
    robot.push(KeyCode.ALT, KeyCode.RIGHT);
    bench.until("moved by a key", () -> asked().get(0) > post + 0.04);
    bench.whole();
    assertThat(gutter().outlets().get(0)).isCloseTo(post + 0.05, within(1e-3));
    robot.push(KeyCode.SHORTCUT, KeyCode.Z).push(KeyCode.SHORTCUT, KeyCode.Z);
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    bench.until("all undone", () -> asked().isEmpty());
    bench.whole();
    assertThat(gutter().outlets().get(0)).isCloseTo(first, within(1e-9));
  }

  @Test
  void anOutletIsAddedWhereThePlanIsPressedAndAnyButTheLastIsRemoved(FxRobot robot)
      throws IOException {
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
    robot.clickOn("#tab-plan");
    bench.until("a plan", () -> bench.model().drawings().plan().image().get().isPresent());
    bench.settle();
    List<Double> first = gutter().outlets();
    double free = gutter().length() / 2;

    robot.clickOn(onScreen(robot, free), MouseButton.SECONDARY).clickOn("#menu-outlet-add");
    bench.until("added", () -> asked().size() == first.size() + 1);
    bench.whole();
    assertThat(gutter().outlets()).hasSize(first.size() + 1).containsAll(first);
    assertThat(gutter().outlets()).anySatisfy(o -> assertThat(o).isCloseTo(free, within(0.13)));
    assertThat(bench.model().session().toUndo().get()).contains("Add an outlet");

    bench.settle();
    int added = gutter().outlets().indexOf(nearest(free));
    robot.clickOn(onScreen(robot, gutter().outlets().get(added)));
    robot.push(KeyCode.ALT, KeyCode.DELETE);
    bench.until("removed", () -> asked().size() == first.size());
    bench.whole();
    assertThat(gutter().outlets()).isEqualTo(first);
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    bench.until("undone", () -> asked().size() == first.size() + 1);
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    bench.until("all undone", () -> asked().isEmpty());
    bench.whole();
  }

  private double nearest(double metres) {
    return gutter().outlets().stream()
        .min(Comparator.comparingDouble(o -> Math.abs(o - metres)))
        .orElseThrow();
  }

  @Test
  void anOutletIsAddedAtTheSelectedBayByKeysAndOneTooNearIsRefused(FxRobot robot)
      throws IOException {
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
    List<Double> first = gutter().outlets();
    robot.interact(() -> bench.view().requestFocus());
    robot.push(KeyCode.ALT, KeyCode.O);
    assertThat(asked()).as("nothing is selected").isEmpty();

    robot.interact(() -> bench.model().select(Set.of(new Item.OfBay("deck-1/field-1", "B6"))));
    robot.push(KeyCode.ALT, KeyCode.O);
    bench.until("added", () -> asked().size() == first.size() + 1);
    bench.whole();
    assertThat(gutter().outlets()).hasSize(first.size() + 1);
    List<Double> more = asked();

    robot.push(KeyCode.ALT, KeyCode.O);
    bench.until("refused", () -> bench.model().session().problem().get().isPresent());
    assertThat(bench.model().session().problem().get().orElseThrow().message())
        .contains("no single joist is between the outlets");
    assertThat(asked()).isEqualTo(more);
  }

  private static Optional<Finding> single(Result result) {
    return result.findings().stream()
        .filter(f -> f.rule().id().equals("single-outlet"))
        .findFirst();
  }

  @Test
  void aGutterWithASingleOutletGetsASecondFromItsFinding(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    Finding found = single(bench.whole()).orElseThrow();
    double first = gutter().outlets().get(0);
    robot.interact(() -> bench.model().selecting().goTo(found));
    robot.push(KeyCode.ALT, KeyCode.O);
    bench.until("added", () -> asked().size() == 2);
    Result two = bench.whole();
    assertThat(single(two)).isEmpty();
    double farthest =
        gutter().posts().stream()
            .max(Comparator.comparingDouble(p -> Math.abs(p - first)))
            .orElseThrow();
    assertThat(gutter().outlets()).anySatisfy(o -> assertThat(o).isCloseTo(farthest, within(1e-3)));
  }

  @Test
  void theOnlyOutletOfAGutterStays(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    Result whole = bench.whole();
    assertThat(gutter().outlets()).hasSize(1);
    Item only =
        whole.layout().parts().stream()
            .filter(p -> p.kind() == PartKind.OUTLET)
            .findFirst()
            .<Item>map(p -> new Item.OfPart(p.id()))
            .orElseThrow();
    robot.interact(() -> bench.model().select(Set.of(only)));
    assertThat(bench.model().outlets().canMove()).isTrue();
    assertThat(bench.model().outlets().canRemove()).isFalse();
    robot.interact(() -> bench.model().outlets().remove());
    assertThat(asked()).isEmpty();
  }

  private List<Inspection.Row> inspected(Result result) {
    return Inspection.of(
            bench.model().selection().get().iterator().next(), result, bench.model().units().get())
        .orElseThrow()
        .rows();
  }
}
