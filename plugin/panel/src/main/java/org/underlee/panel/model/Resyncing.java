package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.underlee.run.BayChange;
import org.underlee.run.DeckRun;
import org.underlee.run.Resync;
import org.underlee.run.Resynced;
import org.underlee.run.SurveyRequest;
import org.underlee.units.Lengths.UnitSystem;

/** Takes the assembly of an old model over into the open one, a new export of the same deck. */
public final class Resyncing implements AutoCloseable {
  private final Session session;
  private final Saving saving;
  private final ObjectProperty<UnitSystem> units;
  private final Newest working;
  private final ReadOnlyBooleanWrapper busy = new ReadOnlyBooleanWrapper();
  private final ReadOnlyObjectWrapper<Optional<Resynced>> resynced =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private Optional<Decisions> takenOver = Optional.empty();
  private final ReadOnlyObjectWrapper<Optional<Problem>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  Resyncing(Session session, Saving saving, ObjectProperty<UnitSystem> units, Executor screen) {
    this.session = session;
    this.saving = saving;
    this.units = units;
    working = new Newest("taking an assembly over", screen);
    session.model().addListener((o, before, now) -> forget());
  }

  /** Stops taking over; what is decided stays as it is. */
  void cancel() {
    working.cancel();
    busy.set(false);
  }

  private void forget() {
    cancel();
    problem.set(Optional.empty());
    resynced.set(Optional.empty());
    takenOver = Optional.empty();
  }

  public ReadOnlyObjectProperty<Optional<Resynced>> resynced() {
    return resynced.getReadOnlyProperty();
  }

  public ReadOnlyBooleanProperty busy() {
    return busy.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<Optional<Problem>> problem() {
    return problem.getReadOnlyProperty();
  }

  /**
   * Lays the assembly of a drained model out in the open one, with what was decided then. That is
   * then what is decided here too, as one step to undo.
   */
  public void from(Path drained) {
    session.model().get().ifPresent(export -> from(drained, export));
  }

  private void from(Path drained, Path export) {
    Decisions decisions = session.decisions().get();
    List<String> services = session.servicesRead();
    problem.set(Optional.empty());
    busy.set(true);
    working.run(
        () -> {
          SurveyRequest asked = new DecidedFiles(decisions, export).request(services);
          return Resync.of(export, drained, asked.services(), asked.overrides(), Optional.empty());
        },
        made -> {
          busy.set(false);
          session.reads(drained, "the old model");
          session.decide("Take over what was decided", d -> d.again(made.again()));
          takenOver = Optional.of(session.decisions().get());
          resynced.set(Optional.of(made));
        },
        e -> {
          busy.set(false);
          problem.set(Optional.of(Problem.of(e)));
        });
  }

  /** What became of bays, and of what was decided; nothing before there is a result. */
  public List<Table> tables() {
    Names names = Names.of(session.result().get());
    return resynced.get().map(r -> ChangeTables.of(r, names, units.get())).orElse(List.of());
  }

  /** {@code 13 kept, 1 moved}. */
  public String summary() {
    return resynced.get().map(Resyncing::summary).orElse("");
  }

  private static String summary(Resynced r) {
    return Stream.of(BayChange.Kind.values())
        .filter(k -> r.count(k) > 0)
        .map(k -> r.count(k) + " " + k.word())
        .collect(Collectors.joining(", "));
  }

  /**
   * Whether what was taken over is still what is decided: bays keep their names only in a design
   * that was taken over, so what was decided since is not in it.
   */
  public boolean mayWrite() {
    Decisions now = session.decisions().get();
    return resynced.get().isPresent() && takenOver.filter(now::designsAs).isPresent();
  }

  /** Writes the new export with the assembly; the export itself stays as it is. */
  public void write(Path target) {
    Optional<Path> export = session.model().get();
    if (export.isPresent() && mayWrite()) {
      Resynced made = resynced.get().get();
      saving.save(
          target,
          FileKind.MODELS,
          () -> DeckRun.save(made.design(), export.get(), target),
          "Wrote " + target.getFileName() + "; bays: " + summary(made) + ".");
    }
  }

  @Override
  public void close() {
    working.close();
  }
}
