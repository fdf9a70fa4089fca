package org.underlee.panel.view;

import java.util.Optional;
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
  private final Button undo;
  private final Button redo;
  private final Button export;
  private final Button packet;
  private final Button write;

  HeaderView(PanelModel model, Actions actions, PaletteView palette) {
    this.model = model;
    this.actions = actions;
    fileName.getStyleClass().add("file-name");
    fileName.setId("file-name");
    Region gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    write = new Button("Write …", Icons.icon("mdi2c-content-save-outline"));
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
    undo = icon("undo");
    redo = icon("redo");
    export = icon("export");
    packet = icon("packet");
    getChildren().addAll(undo, redo);
    getChildren()
        .addAll(
            Icons.button(
                "tone", "mdi2t-theme-light-dark", "Light, dark, high contrast", this::nextTone),
            export,
            packet,
            write);
    getStyleClass().add("header");
    setAlignment(Pos.CENTER_LEFT);
    model.session().model().addListener((o, before, now) -> showFile());
    model.session().result().addListener((o, before, now) -> showWhatCanBeDone());
    model.session().toUndo().addListener((o, before, now) -> showWhatCanBeDone());
    model.session().toRedo().addListener((o, before, now) -> showWhatCanBeDone());
    showFile();
    showWhatCanBeDone();
  }

  private void showWhatCanBeDone() {
    undo.setDisable(!actions.named("undo").can().getAsBoolean());
    redo.setDisable(!actions.named("redo").can().getAsBoolean());
    export.setDisable(!actions.named("export").can().getAsBoolean());
    packet.setDisable(!actions.named("packet").can().getAsBoolean());
    write.setDisable(!actions.named("write").can().getAsBoolean());
    say(undo, "undo", model.session().toUndo().get());
    say(redo, "redo", model.session().toRedo().get());
  }

  /** What would be taken back or done again, and by which keys. */
  private void say(Button button, String id, Optional<String> what) {
    Command command = actions.named(id);
    String words = command.words() + what.map(w -> ": " + w).orElse("");
    button.setAccessibleText(words);
    button.getTooltip().setText(words + "   " + Keys.words(command.keys()));
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
