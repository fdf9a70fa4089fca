package org.underlee.panel;

import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Application;
import org.underlee.run.ModelWindow;

/** What {@code underlee open} finds when the panel's jar is there. */
public final class FileWindow implements ModelWindow {
  @Override
  public void open(Optional<Path> model) {
    String[] arguments = model.map(Path::toString).stream().toArray(String[]::new);
    Application.launch(PanelApp.class, arguments);
  }
}
