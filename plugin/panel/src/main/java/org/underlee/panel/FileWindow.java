package org.underlee.panel;

import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Application;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.run.ModelWindow;

/** What {@code underlee open} finds when the panel's jar is there. */
public final class FileWindow implements ModelWindow {
  /**
   * Opens the window.
   *
   * @throws InputException when there is no screen to open it on
   */
  @Override
  public void open(Optional<Path> model) {
    String[] arguments = model.map(Path::toString).stream().toArray(String[]::new);
    try {
      Application.launch(PanelApp.class, arguments);
    } catch (UnsupportedOperationException e) {
      throw new InputException(
          Place.NOWHERE,
          "there is no screen to open a window on: " + e.getMessage(),
          "Start it where a desktop is; every other verb works without one.");
    }
  }
}
