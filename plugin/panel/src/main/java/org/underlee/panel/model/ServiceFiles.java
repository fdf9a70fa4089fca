package org.underlee.panel.model;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** The models of services that are decided on: seen, added and removed. */
public final class ServiceFiles {
  /**
   * One of them.
   *
   * @param file as it is decided on
   * @param notRead why the model is shown without it
   */
  public record ServiceFile(String file, Optional<Problem> notRead) {
    public String name() {
      return String.valueOf(Path.of(file).getFileName());
    }
  }

  private final Session session;
  private final ReadOnlyObjectWrapper<Optional<Problem>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  ServiceFiles(Session session) {
    this.session = session;
    session.model().addListener((o, before, now) -> problem.set(Optional.empty()));
    session.decisions().addListener((o, before, now) -> problem.set(Optional.empty()));
  }

  /** Why the last file was not added. */
  public ReadOnlyObjectProperty<Optional<Problem>> problem() {
    return problem.getReadOnlyProperty();
  }

  /** Those of the newest decisions. */
  public List<ServiceFile> files() {
    return session.decisions().get().services().stream()
        .map(s -> new ServiceFile(s, Optional.ofNullable(session.leftOut().get().get(s))))
        .toList();
  }

  /** Why the model is shown without some of them, in words; empty when it is not. */
  public String notRead() {
    return String.join(
        " ",
        files().stream()
            .flatMap(f -> f.notRead().stream())
            .map(p -> "Left out: " + p.words())
            .toList());
  }

  /** Adds models of services, as one step to undo; one that is there already is told. */
  public void add(List<Path> models) {
    List<Path> others = new ArrayList<>();
    Optional<Problem> first = Optional.empty();
    for (Path model : models) {
      Optional<Problem> slip = slip(model);
      if (slip.isPresent()) {
        first = first.or(() -> slip);
      } else if (others.stream().noneMatch(m -> isSame(m, model))) {
        others.add(model);
      }
    }
    if (!others.isEmpty()) {
      session.decide("Add services", d -> with(d, others));
    }
    problem.set(first);
  }

  private static Decisions with(Decisions decisions, List<Path> models) {
    Decisions next = decisions;
    for (Path model : models) {
      next = next.withService(model);
    }
    return next;
  }

  private Optional<Problem> slip(Path model) {
    if (session.model().get().filter(m -> isSame(m, model)).isPresent()) {
      return told(model, "is the open model itself", "Add models of other trades.");
    }
    boolean there = files().stream().anyMatch(f -> isSame(Path.of(f.file()), model));
    return there
        ? told(model, "is among the services already", "To read it anew, remove it first.")
        : Optional.empty();
  }

  private static Optional<Problem> told(Path model, String what, String advice) {
    return Optional.of(new Problem(model.getFileName() + " " + what + ".", advice));
  }

  private static boolean isSame(Path file, Path other) {
    try {
      if (Files.exists(file) && Files.exists(other)) {
        return Files.isSameFile(file, other);
      }
    } catch (IOException e) {
      return false; // what cannot be looked at is told when it is read
    }
    return file.toAbsolutePath().normalize().equals(other.toAbsolutePath().normalize());
  }

  /** Removes one, as one step to undo. */
  public void remove(ServiceFile file) {
    session.decide("Remove " + file.name(), d -> d.withoutService(file.file()));
  }
}
