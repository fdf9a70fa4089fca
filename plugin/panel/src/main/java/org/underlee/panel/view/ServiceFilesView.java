package org.underlee.panel.view;

import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Problem;
import org.underlee.panel.model.ServiceFiles.ServiceFile;

/** The models of services that the assembly goes round, each to be removed. */
final class ServiceFilesView extends VBox {
  private final PanelModel model;
  private final FlowPane files = new FlowPane();
  private final Label slip = new Label();

  ServiceFilesView(PanelModel model) {
    this.model = model;
    files.setId("service-files");
    files.getStyleClass().add("files");
    slip.setId("service-slip");
    slip.getStyleClass().add("slip");
    slip.setWrapText(true);
    slip.setMinWidth(0);
    getChildren().addAll(files, slip);
    getStyleClass().add("service-files");
    model.session().decisions().addListener((o, before, now) -> fill());
    model.session().leftOut().addListener((o, before, now) -> fill());
    model.serviceFiles().problem().addListener((o, before, now) -> fill());
    fill();
  }

  private void fill() {
    files.getChildren().setAll(model.serviceFiles().files().stream().map(this::row).toList());
    String words =
        model
            .serviceFiles()
            .problem()
            .get()
            .map(Problem::words)
            .orElseGet(model.serviceFiles()::notRead);
    slip.setText(words);
    Seen.set(slip, !words.isEmpty());
    Seen.set(this, !words.isEmpty() || !files.getChildren().isEmpty());
  }

  private HBox row(ServiceFile file) {
    Label name = new Label(file.name() + (file.notRead().isPresent() ? " (not read)" : ""));
    name.setGraphic(Icons.icon(file.notRead().isPresent() ? "mdi2a-alert" : "mdi2p-pipe"));
    name.setTooltip(new Tooltip(file.file()));
    Button remove =
        Icons.button(
            "remove-service-" + files.getChildren().size(),
            "mdi2c-close",
            "Remove " + file.name() + " from the services",
            () -> model.serviceFiles().remove(file));
    remove.getStyleClass().add("remove-service");
    HBox row = new HBox(name, remove);
    row.setAlignment(Pos.CENTER_LEFT);
    row.getStyleClass().add("file");
    return row;
  }
}
