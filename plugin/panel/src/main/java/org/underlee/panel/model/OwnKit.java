package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.underlee.kit.KitReader;

/** A kit of the user's own: read and tried out beside the screen's thread before it is used. */
public final class OwnKit implements AutoCloseable {
  private final Session session;
  private final Newest reading;
  private final ReadOnlyObjectWrapper<Optional<Problem>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  OwnKit(Session session, Executor screen) {
    this.session = session;
    reading = new Newest("reading a kit", screen);
    session.model().addListener((o, before, now) -> problem.set(Optional.empty()));
    session.decisions().addListener((o, before, now) -> problem.set(Optional.empty()));
  }

  /** Why the last kit that was chosen cannot be used. */
  public ReadOnlyObjectProperty<Optional<Problem>> problem() {
    return problem.getReadOnlyProperty();
  }

  /**
   * Reads a kit file and uses it, as one step to undo; the one in use is read again. A kit that
   * cannot be used is told, and nothing is decided.
   */
  public void choose(Path file) {
    String name = file.toAbsolutePath().normalize().toString();
    problem.set(Optional.empty());
    reading.run(
        () -> KitReader.named(name),
        kit -> use(name),
        e -> problem.set(Optional.of(Problem.of(e))));
  }

  private void use(String name) {
    if (session.decisions().get().kit().equals(name)) {
      session.layOutAgain();
    } else {
      session.decide("Use a kit of your own", d -> d.withKit(name));
    }
  }

  @Override
  public void close() {
    reading.close();
  }
}
