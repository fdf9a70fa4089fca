package org.underlee.panel.view;

import java.nio.file.Path;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import org.underlee.panel.model.PanelModel;

/** Before a model is open: where to drop one, and those that were open before. */
final class WelcomeView extends VBox {
  private final PanelModel model;
  private final VBox recent = new VBox();

  WelcomeView(PanelModel model, Runnable open) {
    this.model = model;
    setId("welcome");
    getStyleClass().add("welcome");
    setAlignment(Pos.CENTER);
    Label name = new Label("Underlee");
    name.getStyleClass().add("welcome-name");
    Label words = new Label("Drop a building model with a deck here");
    words.getStyleClass().add("welcome-words");
    Label formats = new Label("IFC2X3, IFC4 or IFC4X3, plain or zipped");
    formats.getStyleClass().add("quiet");
    Button button = new Button("Open a model …", Icons.icon("mdi2f-folder-open-outline"));
    button.getStyleClass().add("accent");
    button.setId("welcome-open");
    button.setOnAction(e -> open.run());
    recent.setAlignment(Pos.CENTER);
    recent.getStyleClass().add("recent");
    getChildren().addAll(Icons.icon("mdi2h-home-roof"), name, words, formats, button, recent);
    fill();
  }

  void fill() {
    recent.getChildren().clear();
    model
        .settings()
        .get()
        .recent()
        .forEach(
            file -> {
              Path path = Path.of(file);
              Hyperlink link = new Hyperlink(path.getFileName() + "   " + path.getParent());
              link.setOnAction(e -> model.open(path));
              recent.getChildren().add(link);
            });
  }
}
