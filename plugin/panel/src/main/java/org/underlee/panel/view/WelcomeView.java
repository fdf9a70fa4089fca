package org.underlee.panel.view;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.RecentFiles.Recent;

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
    model.recent().files().addListener((o, before, now) -> fill(now));
    fill(model.recent().files().get());
  }

  private void fill(List<Recent> files) {
    recent.getChildren().clear();
    for (Recent file : files) {
      Hyperlink link = new Hyperlink(file.words());
      link.setDisable(!file.there());
      link.setOnAction(e -> model.recent().open(file));
      recent.getChildren().add(link);
    }
  }
}
