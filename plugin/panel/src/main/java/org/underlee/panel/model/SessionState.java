package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** What a session shows of itself; set by it alone, on the screen's thread. */
abstract class SessionState {
  final ReadOnlyObjectWrapper<Optional<Path>> model = wrapper(Optional.empty());
  final ReadOnlyObjectWrapper<Decisions> decisions = wrapper(Decisions.FIRST);
  final ReadOnlyObjectWrapper<Optional<Result>> result = wrapper(Optional.empty());
  final ReadOnlyObjectWrapper<Optional<Problem>> problem = wrapper(Optional.empty());
  final ReadOnlyBooleanWrapper stale = new ReadOnlyBooleanWrapper();
  final ReadOnlyStringWrapper busyWith = new ReadOnlyStringWrapper("");
  final ReadOnlyObjectWrapper<Optional<String>> toUndo = wrapper(Optional.empty());
  final ReadOnlyObjectWrapper<Optional<String>> toRedo = wrapper(Optional.empty());

  private static <T> ReadOnlyObjectWrapper<T> wrapper(T first) {
    return new ReadOnlyObjectWrapper<>(first);
  }

  public ReadOnlyObjectProperty<Optional<Path>> model() {
    return model.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<Decisions> decisions() {
    return decisions.getReadOnlyProperty();
  }

  /** The last good one. */
  public ReadOnlyObjectProperty<Optional<Result>> result() {
    return result.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<Optional<Problem>> problem() {
    return problem.getReadOnlyProperty();
  }

  /** Whether something shown is older than the decisions. */
  public ReadOnlyBooleanProperty stale() {
    return stale.getReadOnlyProperty();
  }

  /** What is being worked on, in words; empty at rest. */
  public ReadOnlyStringProperty busyWith() {
    return busyWith.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<Optional<String>> toUndo() {
    return toUndo.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<Optional<String>> toRedo() {
    return toRedo.getReadOnlyProperty();
  }
}
