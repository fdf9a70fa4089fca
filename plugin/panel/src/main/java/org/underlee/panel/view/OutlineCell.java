package org.underlee.panel.view;

import java.util.List;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.control.TreeCell;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.underlee.finding.Level;
import org.underlee.panel.model.FindingCount;
import org.underlee.panel.model.Outline;

/** Shows a row of the outline; made once and filled anew. */
final class OutlineCell extends TreeCell<Outline> {
  private final Label name = new Label();
  private final Label note = new Label();
  private final Label found = new Label();
  private final Label state = new Label();
  private final Region gap = new Region();
  private final HBox row = new HBox(name, note, gap, found, state);
  private final Tooltip words = new Tooltip();
  private Optional<Level> worst = Optional.empty();

  /**
   * @param again what a click on a row that is chosen already does
   */
  OutlineCell(Runnable again) {
    row.setAlignment(Pos.CENTER_LEFT);
    row.getStyleClass().add("outline-row");
    row.setOnMouseClicked(e -> again.run());
    note.getStyleClass().add("quiet");
    name.setMinWidth(Region.USE_PREF_SIZE);
    found.setMinWidth(Region.USE_PREF_SIZE);
    state.setMinWidth(Region.USE_PREF_SIZE);
    HBox.setHgrow(gap, Priority.ALWAYS);
    setPrefWidth(0);
    setText(null);
    setGraphic(row);
  }

  @Override
  protected void updateItem(Outline item, boolean empty) {
    super.updateItem(item, empty);
    boolean none = empty || item == null;
    // the row stays: taken away and put back, its styles would be worked out anew
    name.setText(none ? "" : item.name());
    note.setText(none ? "" : item.note());
    Seen.say(state, none ? "" : item.state().words());
    Optional.ofNullable(getDisclosureNode())
        .ifPresent(arrow -> arrow.setVisible(!none && !getTreeItem().isLeaf()));
    if (none) {
      Seen.say(found, "");
      setAccessibleText(null);
      setTooltip(null);
      return;
    }
    List<String> look =
        List.of(
            "label", "state", "state-" + item.state().name().toLowerCase(java.util.Locale.ROOT));
    if (!state.getStyleClass().equals(look)) {
      state.getStyleClass().setAll(look);
    }
    show(item.found());
    String all = item.spoken();
    setAccessibleText(all);
    words.setText(all);
    setTooltip(words);
  }

  /** How many findings, with the sign of the worst, which differs in shape. */
  private void show(FindingCount count) {
    Seen.say(found, count.count() == 0 ? "" : Integer.toString(count.count()));
    if (!count.worst().equals(worst)) {
      worst = count.worst();
      found.setGraphic(worst.map(FindingCell::sign).orElse(null));
    }
  }
}
