package org.underlee.panel.view;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.underlee.panel.model.AlsoDecided.Row;
import org.underlee.panel.model.PanelModel;

/** What is decided besides, each to be taken back; not there where there is nothing. */
final class AlsoDecidedView extends VBox {
  private final PanelModel model;
  private final VBox rows = new VBox();
  private List<String> shown = List.of();

  AlsoDecidedView(PanelModel model) {
    this.model = model;
    rows.setId("also-decided");
    Label head = new Label("Also decided");
    head.getStyleClass().add("quiet");
    getChildren().addAll(head, rows);
    model.session().decisions().addListener((o, before, now) -> fill());
    model.session().result().addListener((o, before, now) -> fill());
    model.units().addListener((o, before, now) -> fill());
    fill();
  }

  private void fill() {
    List<Row> all = model.alsoDecided().rows(model.units().get());
    List<String> words = all.stream().map(Row::words).toList();
    if (!words.equals(shown)) {
      shown = words;
      rows.getChildren().setAll(all.stream().map(this::node).toList());
    }
    setVisible(!all.isEmpty());
    setManaged(!all.isEmpty());
  }

  private HBox node(Row row) {
    Label words = new Label(row.words());
    words.setWrapText(true);
    words.setMinWidth(0);
    HBox.setHgrow(words, Priority.ALWAYS);
    words.setMaxWidth(Double.MAX_VALUE);
    Button remove =
        Icons.button(
            "take-back",
            "mdi2c-close",
            "Take back: " + row.words(),
            () -> model.alsoDecided().remove(row));
    remove.getStyleClass().add("take-back");
    HBox node = new HBox(words, remove);
    node.setAlignment(Pos.CENTER_LEFT);
    return node;
  }
}
