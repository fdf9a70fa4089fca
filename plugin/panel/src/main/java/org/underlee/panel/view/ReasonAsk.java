package org.underlee.panel.view;

import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.TextInputDialog;

/** Asks why something is accepted as it is. */
final class ReasonAsk {
  private ReasonAsk() {}

  /** The reason, blank when it is no longer accepted; empty when the question was put away. */
  static Optional<String> over(Node owner, String title, String what, Optional<String> before) {
    TextInputDialog ask = new TextInputDialog(before.orElse(""));
    ask.initOwner(owner.getScene().getWindow());
    ask.setTitle(title);
    ask.setHeaderText(what);
    ask.setContentText("Reason");
    ask.getEditor().setId("accept-reason");
    ask.getDialogPane().getStylesheets().setAll(owner.getScene().getRoot().getStylesheets());
    ask.getDialogPane().getStyleClass().addAll(owner.getScene().getRoot().getStyleClass());
    return ask.showAndWait();
  }
}
