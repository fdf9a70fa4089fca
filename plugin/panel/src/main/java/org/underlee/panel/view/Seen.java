package org.underlee.panel.view;

import javafx.scene.Node;
import javafx.scene.control.Label;

/** Whether something is there: what is not takes no room either. */
final class Seen {
  private Seen() {}

  static void set(Node node, boolean isSeen) {
    node.setVisible(isSeen);
    node.setManaged(isSeen);
  }

  /** Says something; says nothing, and takes no room, where there is nothing to say. */
  static void say(Label label, String text) {
    label.setText(text);
    set(label, !text.isEmpty());
  }
}
