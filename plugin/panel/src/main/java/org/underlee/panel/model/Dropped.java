package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** What becomes of files that are dropped on the panel. */
public final class Dropped {
  /** How the names of models end. */
  public static final List<String> MODELS = List.of(".ifc", ".ifczip", ".zip");

  private final Session session;
  private final ServiceFiles services;
  private final Consumer<Path> open;
  private final ReadOnlyObjectWrapper<Optional<Problem>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  /**
   * @param open opens a model
   */
  Dropped(Session session, ServiceFiles services, Consumer<Path> open) {
    this.session = session;
    this.services = services;
    this.open = open;
    session.model().addListener((o, before, now) -> problem.set(Optional.empty()));
    session.decisions().addListener((o, before, now) -> problem.set(Optional.empty()));
  }

  /** Which of the files that were dropped last were left, and why. */
  public ReadOnlyObjectProperty<Optional<Problem>> problem() {
    return problem.getReadOnlyProperty();
  }

  /**
   * Adds models to the services where those are looked at, else opens the first. What is left is
   * told.
   *
   * @param atServices whether a person looks at the services
   */
  public void drop(List<Path> files, boolean atServices) {
    List<Path> models = files.stream().filter(Dropped::isModel).toList();
    List<Path> others = files.stream().filter(f -> !isModel(f)).toList();
    boolean adds = atServices && session.model().get().isPresent();
    if (adds && !models.isEmpty()) {
      services.add(models);
    } else {
      models.stream().findFirst().ifPresent(open);
    }
    List<Path> second = adds ? List.of() : models.stream().skip(1).toList();
    problem.set(noModels(others).or(() -> tooMany(second)));
  }

  private static boolean isModel(Path file) {
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    return MODELS.stream().anyMatch(name::endsWith);
  }

  private static Optional<Problem> noModels(List<Path> files) {
    return told(
        files,
        " was dropped and is no model.",
        " were dropped and are no models.",
        "Drop files that end in "
            + String.join(" or ", MODELS)
            + "; a kit or a table of capacities is chosen by its command (Ctrl+K).");
  }

  private static Optional<Problem> tooMany(List<Path> files) {
    return told(
        files,
        " was left: one model is open at a time.",
        " were left: one model is open at a time.",
        "To add models of pipes, ducts and cables, drop them while Services is in sight.");
  }

  private static Optional<Problem> told(
      List<Path> files, String one, String several, String advice) {
    String names =
        files.stream().map(f -> String.valueOf(f.getFileName())).collect(Collectors.joining(", "));
    return files.isEmpty()
        ? Optional.empty()
        : Optional.of(new Problem(names + (files.size() == 1 ? one : several), advice));
  }
}
