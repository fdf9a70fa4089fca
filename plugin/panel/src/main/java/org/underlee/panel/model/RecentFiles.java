package org.underlee.panel.model;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * Models that were open before, but for the open one. Whether they are still there is looked up
 * beside the screen's thread: a disk of another machine may take its time.
 */
public final class RecentFiles implements AutoCloseable {
  /** One of them, and whether it was there when it was last looked for. */
  public record Recent(Path file, boolean there) {
    /** Its name and folder; that it is gone, where it is. */
    public String words() {
      return file.getFileName() + "   " + file.getParent() + (there ? "" : "   (no longer there)");
    }
  }

  private final ObjectProperty<Settings> settings;
  private final ReadOnlyObjectProperty<Optional<Path>> model;
  private final Consumer<Path> open;
  private final Newest looking;
  private final ReadOnlyObjectWrapper<List<Recent>> files = new ReadOnlyObjectWrapper<>(List.of());

  RecentFiles(
      ObjectProperty<Settings> settings,
      ReadOnlyObjectProperty<Optional<Path>> model,
      Consumer<Path> open,
      Executor screen) {
    this.settings = settings;
    this.model = model;
    this.open = open;
    looking = new Newest("looking for recent files", screen);
    settings.addListener(
        (o, before, now) -> {
          if (!before.recent().equals(now.recent())) {
            look();
          }
        });
    model.addListener((o, before, now) -> look());
    look();
  }

  /** The newest first. */
  public ReadOnlyObjectProperty<List<Recent>> files() {
    return files.getReadOnlyProperty();
  }

  /** Looks again which are there. */
  public void look() {
    Optional<Path> shown = model.get().map(m -> m.toAbsolutePath().normalize());
    List<Path> all =
        settings.get().recent().stream()
            .map(Path::of)
            .filter(f -> shown.filter(f::equals).isEmpty())
            .toList();
    looking.run(
        () -> all.stream().map(f -> new Recent(f, Files.isRegularFile(f))).toList(),
        files::set,
        e -> {});
  }

  /** Opens one, where it is there. */
  public void open(Recent recent) {
    if (recent.there()) {
      open.accept(recent.file());
    }
  }

  public boolean someAreGone() {
    return files.get().stream().anyMatch(r -> !r.there());
  }

  /** Takes those that are gone from the list; what was decided about them stays known. */
  public void forgetGone() {
    List<String> gone =
        files.get().stream().filter(r -> !r.there()).map(r -> r.file().toString()).toList();
    settings.set(settings.get().without(gone));
  }

  @Override
  public void close() {
    looking.close();
  }
}
