package org.underlee.panel.view;

import javafx.scene.control.Button;
import javafx.scene.control.Tooltip;
import org.kordamp.ikonli.javafx.FontIcon;

/** Small buttons with a sign, a tip and a name for screen readers. */
final class Icons {
  private Icons() {}

  static FontIcon icon(String name) {
    FontIcon icon = new FontIcon(name);
    icon.getStyleClass().add("icon");
    return icon;
  }

  static Button button(String id, String icon, String words, Runnable action) {
    Button button = new Button("", icon(icon));
    button.setId(id);
    button.getStyleClass().add("icon-button");
    button.setTooltip(new Tooltip(words));
    button.setAccessibleText(words);
    button.setOnAction(e -> action.run());
    return button;
  }
}
