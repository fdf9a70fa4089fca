package org.underlee.panel.view;

import java.util.Locale;
import javafx.scene.control.Button;
import javafx.scene.control.Tooltip;
import org.kordamp.ikonli.javafx.FontIcon;

/** Small buttons with a sign, a tip and a name for screen readers. */
final class Icons {
  /** Pixels high where letters have their usual size. */
  private static final double USUAL = 16;

  private Icons() {}

  /**
   * Makes signs as large as letters. An icon knows no em: it sets the letters of its own.
   *
   * @param times the usual size
   * @return a style sheet
   */
  static String sheet(double times) {
    return String.format(
        Locale.ROOT,
        "data:text/css,.underlee .icon { -fx-icon-size: %.0fpx; }"
            + ".underlee .welcome > .icon { -fx-icon-size: %.0fpx; }",
        USUAL * times,
        4 * USUAL * times);
  }

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
