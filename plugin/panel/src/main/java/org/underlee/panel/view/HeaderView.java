package org.underlee.panel.view;

import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.underlee.panel.model.Command;
import org.underlee.panel.model.PanelModel;

/** The open model's name, and what is done most. */
final class HeaderView extends HBox {
  private final PanelModel model;
  private final Actions actions;
  private final Label fileName = new Label();

  HeaderView(PanelModel model, Actions actions, PaletteView palette) {
    this.model = model;
    this.actions = actions;
    fileName.getStyleClass().add("file-name");
    fileName.setId("file-name");
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    Button write = new Button("Write …", Icons.icon("mdi2c-content-save-outline"));
    write.setId("write");
    write.getStyleClass().add("accent");
    write.setOnAction(e -> actions.run("write"));
    Button search =
        new Button(
            "What do you want to do?   " + Keys.words(PaletteView.KEYS),
            Icons.icon("mdi2m-magnify"));
    search.setId("search");
    search.getStyleClass().add("search");
    search.setOnAction(e -> palette.open());
    getChildren().addAll(icon("open"), new RecentMenu(model), fileName, gap, search);
    getChildren().addAll(icon("undo"), icon("redo"));
    getChildren()
        .addAll(
            Icons.button(
                "tone", "mdi2t-theme-light-dark", "Light, dark, high contrast", this::nextTone),
            icon("export"),
            write);
    getStyleClass().add("header");
    setAlignment(Pos.CENTER_LEFT);
    model.session().model().addListener((o, before, now) -> showFile());
    showFile();
  }

  private Button icon(String id) {
    Command command = actions.named(id);
    return Icons.button(id, command.icon(), command.words(), () -> actions.run(id));
  }

  private void nextTone() {
    model.setTone(model.settings().get().tone().next());
  }

  private void showFile() {
    fileName.setText(
        model.session().model().get().map(f -> f.getFileName().toString()).orElse("No model"));
  }
}
