package org.underlee.panel.view;

import atlantafx.base.theme.PrimerLight;
import java.nio.file.Path;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Screen;
import javafx.stage.Stage;
import org.underlee.panel.host.Host;
import org.underlee.panel.model.Memory;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Settings;

/** The window of our own: the panel on a file, with its place on the screen kept. */
public final class PanelWindow {
  private static final double LEAST_WIDTH = 900;
  private static final double LEAST_HEIGHT = 600;

  /** So much of its title must be there to take hold of. */
  private static final double LEAST_SHOWN = 100;

  private final PanelModel model;
  private final PanelView view;

  /**
   * Fills a stage.
   *
   * @param memory where settings and decisions are kept
   */
  public PanelWindow(Stage stage, Host host, Memory memory, FileAsk ask) {
    Application.setUserAgentStylesheet(new PrimerLight().getUserAgentStylesheet());
    model = new PanelModel(host, memory, Platform::runLater);
    view = new PanelView(model, ask);
    Settings s = model.settings().get();
    stage.setScene(PanelView.scene(view, s.width(), s.height()));
    stage.setMinWidth(LEAST_WIDTH);
    stage.setMinHeight(LEAST_HEIGHT);
    if (isOnAScreen(s)) {
      stage.setX(s.left());
      stage.setY(s.top());
    }
    stage.setMaximized(s.maximized());
    stage.setTitle("Underlee");
    model
        .session()
        .model()
        .addListener(
            (o, before, now) ->
                stage.setTitle(
                    now.map(Path::getFileName).map(f -> f + " – Underlee").orElse("Underlee")));
    stage.setOnHidden(e -> close(stage));
  }

  /** A screen that a window stood on may be gone. */
  private static boolean isOnAScreen(Settings s) {
    return !Double.isNaN(s.left())
        && !Screen.getScreensForRectangle(
                s.left() + LEAST_SHOWN, s.top(), s.width() - 2 * LEAST_SHOWN, LEAST_SHOWN)
            .isEmpty();
  }

  public PanelModel model() {
    return model;
  }

  public PanelView view() {
    return view;
  }

  private void close(Stage stage) {
    Settings now = model.settings().get();
    model
        .settings()
        .set(
            stage.isMaximized()
                ? now.withMaximized()
                : now.at(
                    stage.getX(),
                    stage.getY(),
                    stage.getScene().getWidth(),
                    stage.getScene().getHeight()));
    model.close();
  }
}
