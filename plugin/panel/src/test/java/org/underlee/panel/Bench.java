package org.underlee.panel;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.IntStream;
import javafx.scene.Scene;
import javafx.scene.control.ListView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import javafx.stage.Window;
import org.testfx.api.FxRobot;
import org.testfx.util.WaitForAsyncUtils;
import org.underlee.panel.host.FileHost;
import org.underlee.panel.model.FileKind;
import org.underlee.panel.model.FindingList;
import org.underlee.panel.model.Memory;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Result;
import org.underlee.panel.view.FileAsk;
import org.underlee.panel.view.PanelView;
import org.underlee.panel.view.PanelWindow;
import org.underlee.picture.Image;
import org.underlee.picture.Png;

/** A panel in a window without a display, with a folder of its own, and what tests do with it. */
final class Bench {
  static final Path ROOT = Path.of(System.getProperty("underlee.root", "../.."));
  private static final long PATIENCE_SECONDS = 60;

  final Path folder;
  final FileHost host = new FileHost(Optional.empty());
  final PanelWindow window;
  final Stage stage;
  final Answers answers = new Answers();

  /** What the user answers when asked for a file. */
  static final class Answers implements FileAsk {
    Optional<Path> open = Optional.empty();
    Optional<Path> save = Optional.empty();
    Optional<Path> fill = Optional.empty();
    List<FileKind> offered = List.of();

    @Override
    public Optional<Path> toOpen(String words, List<String> endings) {
      return open;
    }

    @Override
    public Optional<Path> toSave(String words, Path proposed, List<FileKind> kinds) {
      offered = kinds;
      return save;
    }

    @Override
    public Optional<Path> toFill(String words, Path near) {
      return fill;
    }
  }

  Bench(Stage stage) throws IOException {
    this.stage = stage;
    folder = Files.createTempDirectory("panel");
    window = new PanelWindow(stage, host, new Memory(folder.resolve("state")), answers);
    stage.setWidth(1440);
    stage.setHeight(900);
    stage.show();
  }

  PanelModel model() {
    return window.model();
  }

  PanelView view() {
    return window.view();
  }

  /** A sample's model by its folder, copied so that tests may write beside it. */
  Path sample(String name) throws IOException {
    Path samples = ROOT.resolve("samples").resolve(name);
    String file = samples.getFileName() + ".ifc";
    Path to = folder.resolve(file);
    Files.copy(samples.resolve(file), to);
    return to;
  }

  void until(String what, Callable<Boolean> holds) {
    try {
      WaitForAsyncUtils.waitFor(
          PATIENCE_SECONDS, TimeUnit.SECONDS, () -> WaitForAsyncUtils.asyncFx(holds).get());
      WaitForAsyncUtils.waitForFxEvents();
    } catch (TimeoutException e) {
      throw new AssertionError(
          "after "
              + PATIENCE_SECONDS
              + " s still not so: "
              + what
              + "; busy with: "
              + model().session().busyWith().get()
              + "; problem: "
              + model().session().problem().get(),
          e);
    }
  }

  /** Until the design of the newest decisions is there and drawn. */
  Result whole() {
    until(
        "a whole design",
        () ->
            model().session().busyWith().get().isEmpty()
                && model().session().result().get().filter(Result::isWhole).isPresent());
    until(
        "tables",
        () ->
            model()
                .session()
                .result()
                .get()
                .filter(r -> model().lists().get().isOf(r))
                .isPresent());
    until("a picture", () -> model().picture().image().get().isPresent());
    return model().session().result().get().orElseThrow();
  }

  /** Goes to the findings and selects the first that nobody has answered for. */
  void selectAFinding(FxRobot robot) {
    robot.push(KeyCode.SHORTCUT, KeyCode.DIGIT4);
    ListView<?> list = robot.lookup("#findings").queryAs(ListView.class);
    int first =
        IntStream.range(0, list.getItems().size())
            .filter(i -> list.getItems().get(i) instanceof FindingList.Row)
            .findFirst()
            .orElseThrow();
    robot.interact(() -> list.getSelectionModel().select(first));
  }

  /** Lets what was asked to be drawn be drawn. */
  void settle() {
    WaitForAsyncUtils.sleep(450, TimeUnit.MILLISECONDS);
    WaitForAsyncUtils.waitForFxEvents();
  }

  void shot(FxRobot robot, Path file) {
    shot(robot, stage.getScene(), file);
  }

  /** Takes the picture of the last of some windows, such as a dialog. */
  void shot(FxRobot robot, List<Window> windows, Path file) {
    shot(robot, windows.get(windows.size() - 1).getScene(), file);
  }

  private void shot(FxRobot robot, Scene scene, Path file) {
    settle();
    robot.interact(
        () -> {
          WritableImage image = scene.snapshot(null);
          int width = (int) image.getWidth();
          int height = (int) image.getHeight();
          int[] argb = new int[width * height];
          image
              .getPixelReader()
              .getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), argb, 0, width);
          try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            Files.write(file, Png.encode(Image.of(width, height, argb)));
          } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
          }
        });
  }
}
