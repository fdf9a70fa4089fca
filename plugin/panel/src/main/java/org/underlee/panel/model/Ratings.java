package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.underlee.layout.OwnTables;
import org.underlee.run.CapacityTables;

/** By which tables gutters and downspouts are rated: the program's, and one of the user's own. */
public final class Ratings implements AutoCloseable {
  private final Session session;
  private final Newest reading;
  private final ReadOnlyObjectWrapper<Optional<Problem>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  Ratings(Session session, Executor screen) {
    this.session = session;
    reading = new Newest("reading a table of capacities", screen);
    session.model().addListener((o, before, now) -> problem.set(Optional.empty()));
  }

  /** Why the last table that was chosen cannot be used. */
  public ReadOnlyObjectProperty<Optional<Problem>> problem() {
    return problem.getReadOnlyProperty();
  }

  /** Whether a table of the user's own is used. */
  public boolean isOwn() {
    return own().isPresent();
  }

  private Optional<OwnTables> own() {
    return session.decisions().get().wishes().tables();
  }

  /** By what is rated, in words. */
  public String words() {
    return own()
        .map(t -> "Rated by the program's tables and by your own: " + named(t))
        .orElse("Rated by the program's tables.");
  }

  private static String named(OwnTables tables) {
    return CapacityTables.named(tables) + " (" + tables.file() + ").";
  }

  /**
   * Reads a table of the user's own and rates by it, as one step to undo. A table that cannot be
   * used is told, and nothing is decided.
   */
  public void choose(Path file) {
    problem.set(Optional.empty());
    reading.run(
        () -> CapacityTables.at(file),
        tables -> {
          session.reads(file, "the table of capacities");
          session.decide("Rate by your own table", d -> d.withTables(Optional.of(tables)));
        },
        e -> problem.set(Optional.of(Problem.of(e))));
  }

  /** Rates by the program's tables alone, as one step to undo. */
  public void giveUp() {
    problem.set(Optional.empty());
    session.decide("Rate by the program's tables alone", d -> d.withTables(Optional.empty()));
  }

  @Override
  public void close() {
    reading.close();
  }
}
