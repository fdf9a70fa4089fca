package org.underlee.panel.model;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.underlee.panel.host.Host;

/** A panel without a screen, in a host that notes what it is told. */
final class OpenPanel implements AutoCloseable {
  private static final Path SAMPLES =
      Path.of(System.getProperty("underlee.root", "../..")).resolve("samples");

  final Screen screen = new Screen();
  final Listener host = new Listener();
  final PanelModel model;

  /** A host that has nothing open. */
  static final class Listener implements Host {
    final List<Set<String>> told = new ArrayList<>();
    Consumer<Set<String>> selecting = ids -> {};

    @Override
    public Optional<Path> openModel() {
      return Optional.empty();
    }

    @Override
    public void onOpen(Consumer<Path> panel) {}

    @Override
    public void onSelect(Consumer<Set<String>> panel) {
      selecting = panel;
    }

    @Override
    public void select(Set<String> globalIds) {
      told.add(globalIds);
    }

    @Override
    public void apply(Change change) {}

    @Override
    public boolean undo() {
      return false;
    }

    @Override
    public void progress(String words, double share) {}

    @Override
    public void message(String words) {}
  }

  /**
   * Opens a sample.
   *
   * @param folder where what is decided is kept
   */
  OpenPanel(String sample, Path folder) throws IOException, InterruptedException {
    String file = Path.of(sample).getFileName() + ".ifc";
    Path copy = folder.resolve(file);
    Files.copy(SAMPLES.resolve(sample).resolve(file), copy);
    model = new PanelModel(host, new Memory(folder.resolve("state")), screen);
    model.picture().resize(800, 600, 1);
    model.drawings().plan().resize(800, 600, 1);
    model.drawings().section().resize(800, 600, 1);
    model.open(copy);
    whole();
  }

  /** Until the design of the newest decisions is there, and its lists. */
  Result whole() throws InterruptedException {
    until(
        () ->
            model.session().busyWith().get().isEmpty()
                && model.session().result().get().filter(this::isListed).isPresent());
    return model.session().result().get().orElseThrow();
  }

  private boolean isListed(Result result) {
    return result.isWhole()
        && result.decisions().equals(model.session().decisions().get())
        && model.lists().get().isOf(result);
  }

  void until(BooleanSupplier holds) throws InterruptedException {
    while (!holds.getAsBoolean()) {
      screen.runNext();
    }
  }

  List<FindingList.Row> rows() {
    return model.findings().rows(model.lists().get());
  }

  FindingList.Row row(String rule) {
    return rows().stream()
        .filter(r -> r.finding().rule().id().equals(rule))
        .findFirst()
        .orElseThrow();
  }

  @Override
  public void close() {
    model.close();
  }
}
