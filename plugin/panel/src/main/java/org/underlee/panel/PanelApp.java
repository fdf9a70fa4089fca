package org.underlee.panel;

import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Application;
import javafx.stage.Stage;
import org.underlee.panel.host.FileHost;
import org.underlee.panel.model.Memory;
import org.underlee.panel.view.FileAsk;
import org.underlee.panel.view.PanelWindow;

/** Starts JavaFX with the window of our own. */
public final class PanelApp extends Application {
  @Override
  public void start(Stage stage) {
    Optional<Path> model = getParameters().getRaw().stream().findFirst().map(Path::of);
    PanelWindow window =
        new PanelWindow(stage, new FileHost(model), new Memory(folder()), FileAsk.over(stage));
    window.view().requestFocus();
    stage.show();
    if (model.isEmpty()) {
      window.model().rehearse();
    }
  }

  /** Where programs keep their state on this system. */
  private static Path folder() {
    String state = System.getenv("XDG_STATE_HOME");
    Path home = Path.of(System.getProperty("user.home"));
    return state == null ? home.resolve(".underlee") : Path.of(state).resolve("underlee");
  }
}
