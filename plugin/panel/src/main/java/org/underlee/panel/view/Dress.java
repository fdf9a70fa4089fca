package org.underlee.panel.view;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import javafx.scene.Node;
import javafx.scene.layout.Region;
import org.underlee.panel.model.Settings;

/** The panel's colours and letters, for the panel itself and for what has a window of its own. */
final class Dress {
  private static final String SHEET =
      Objects.requireNonNull(Dress.class.getResource("panel.css")).toExternalForm();
  private static final String TONE = "tone-";

  /** Pixels high, at 100 %. */
  private static final double LETTERS = 13;

  private Dress() {}

  /** Puts it on, in place of another. */
  static void put(Region region, Settings settings) {
    region.getStyleClass().removeIf(c -> c.startsWith(TONE));
    region.getStyleClass().add(TONE + settings.tone().name().toLowerCase(Locale.ROOT));
    if (!region.getStyleClass().contains("underlee")) {
      region.getStyleClass().add("underlee");
    }
    double times = settings.letters();
    List<String> sheets = List.of(SHEET, Icons.sheet(times));
    if (!region.getStylesheets().equals(sheets)) {
      region.getStylesheets().setAll(sheets);
    }
    region.setStyle(String.format(Locale.ROOT, "-fx-font-size: %.1fpx;", LETTERS * times));
  }

  /** Puts it on a dialog as on the panel that it was asked from. */
  static void as(Node owner, Region dialog) {
    for (Node node = owner; node != null; node = node.getParent()) {
      if (node instanceof PanelView panel) {
        panel.dress(dialog);
        return;
      }
    }
  }
}
