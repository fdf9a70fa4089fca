package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import javafx.scene.control.TreeItem;
import javafx.scene.control.TreeView;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.underlee.panel.model.Item;
import org.underlee.panel.model.Outline;

/** Rows of the outline stay where they are while what they say changes. */
@ExtendWith(ApplicationExtension.class)
class OutlineTest {
  private Bench bench;

  @Start
  void start(Stage stage) throws IOException {
    bench = new Bench(stage);
  }

  private static List<TreeItem<Outline>> rows(FxRobot robot) {
    @SuppressWarnings("unchecked")
    TreeView<Outline> tree = robot.lookup("#outline").queryAs(TreeView.class);
    List<TreeItem<Outline>> rows = new ArrayList<>();
    for (int i = 0; i < tree.getExpandedItemCount(); i++) {
      rows.add(tree.getTreeItem(i));
    }
    return rows;
  }

  private static List<Outline> flat(List<Outline> outlines, List<TreeItem<Outline>> like) {
    List<Outline> all = new ArrayList<>();
    outlines.forEach(o -> collect(o, all));
    List<Item> shown = like.stream().map(r -> r.getValue().item()).toList();
    return all.stream().filter(o -> shown.contains(o.item())).toList();
  }

  private static void collect(Outline outline, List<Outline> to) {
    to.add(outline);
    outline.inside().forEach(o -> collect(o, to));
  }

  @Test
  void anotherFallChangesWhatRowsSayAndNotTheRows(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
    bench.settle();
    robot.interact(() -> bench.model().select(Set.of(new Item.OfBay("deck-1/field-1", "B6"))));
    List<TreeItem<Outline>> before = rows(robot);
    List<Outline> said = before.stream().map(TreeItem::getValue).toList();
    robot.interact(() -> bench.model().setFall(OptionalDouble.of(64)));
    bench.whole();
    bench.settle();
    List<TreeItem<Outline>> after = rows(robot);
    assertThat(after).hasSameSizeAs(before);
    for (int i = 0; i < after.size(); i++) {
      assertThat(after.get(i)).isSameAs(before.get(i));
    }
    List<Outline> now = after.stream().map(TreeItem::getValue).toList();
    assertThat(now).isNotEqualTo(said);
    assertThat(now).isEqualTo(flat(bench.model().lists().get().decks(), after));
    assertThat(bench.model().selection().get())
        .containsExactly(new Item.OfBay("deck-1/field-1", "B6"));
  }

  @Test
  void anotherModelHasItsOwnRows(FxRobot robot) throws IOException {
    Path pine = bench.sample("pine-deck");
    robot.interact(() -> bench.host.open(pine));
    bench.whole();
    Path balcony = bench.sample("harbour-balcony");
    robot.interact(() -> bench.host.open(balcony));
    bench.whole();
    bench.settle();
    List<TreeItem<Outline>> rows = rows(robot);
    assertThat(rows.stream().map(TreeItem::getValue).toList())
        .isEqualTo(flat(bench.model().lists().get().decks(), rows));
    assertThat(rows).isNotEmpty();
  }
}
