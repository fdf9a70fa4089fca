package org.underlee.panel.view;

import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.StackPane;
import org.underlee.panel.model.PanelModel;

/** Where a picture is; while there is none of the open model it says why. */
final class PicturePlace extends StackPane {
  private final PanelModel model;
  private final Node picture;
  private final Label words = new Label();

  PicturePlace(PanelModel model, Node picture) {
    this.model = model;
    this.picture = picture;
    words.getStyleClass().add("instead");
    words.setWrapText(true);
    words.setMouseTransparent(true);
    getChildren().addAll(picture, words);
    model.session().result().addListener((o, before, now) -> fill());
    model.session().problem().addListener((o, before, now) -> fill());
    model.session().busyWith().addListener((o, before, now) -> fill());
    fill();
  }

  @Override
  public void requestFocus() {
    picture.requestFocus();
  }

  private void fill() {
    String instead = model.insteadOfPictures();
    if (!words.getText().equals(instead)) {
      words.setText(instead);
    }
    words.setVisible(!instead.isEmpty());
  }
}
