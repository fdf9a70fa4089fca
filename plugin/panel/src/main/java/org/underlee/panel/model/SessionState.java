package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** What is decided in a session, step by step, and what it shows; on the screen's thread. */
abstract class SessionState {
  final ReadOnlyObjectWrapper<Optional<Path>> model = wrapper(Optional.empty());
  final ReadOnlyObjectWrapper<Decisions> decisions = wrapper(Decisions.FIRST);
  final ReadOnlyObjectWrapper<Optional<Result>> result = wrapper(Optional.empty());
  final ReadOnlyObjectWrapper<Optional<Problem>> problem = wrapper(Optional.empty());
  final ReadOnlyObjectWrapper<Map<String, Problem>> leftOut = wrapper(Map.of());
  final ReadOnlyBooleanWrapper stale = new ReadOnlyBooleanWrapper();
  final ReadOnlyStringWrapper busyWith = new ReadOnlyStringWrapper("");
  final ReadOnlyObjectWrapper<Optional<String>> toUndo = wrapper(Optional.empty());
  final ReadOnlyObjectWrapper<Optional<String>> toRedo = wrapper(Optional.empty());

  private History<Decisions> history = new History<>(Decisions.FIRST);

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

  /** Models of services that could not be read, each with why: the result is without them. */
  public ReadOnlyObjectProperty<Map<String, Problem>> leftOut() {
    return leftOut.getReadOnlyProperty();
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

  /**
   * Told of each change.
   *
   * @param before what was decided until now
   */
  abstract void follow(Decisions before);

  private void decided(Decisions before) {
    publish();
    follow(before);
  }

  /** Begins anew, with nothing to undo. */
  final void begin(Decisions with) {
    history = new History<>(with);
    publish();
  }

  /** The services that are decided on, without those that could not be read. */
  final List<String> servicesRead() {
    return decided().services().stream().filter(s -> !leftOut.get().containsKey(s)).toList();
  }

  /** What is decided now. */
  final Decisions decided() {
    return history.now();
  }

  /**
   * Takes the last decision back, with no way to redo it.
   *
   * @return whether there was one
   */
  final boolean takeBack() {
    boolean some = history.takeBack();
    publish();
    return some;
  }

  /** Decides something, as one step to undo. */
  public void decide(String words, UnaryOperator<Decisions> change) {
    Decisions before = history.now();
    history.put(words, change.apply(before));
    decided(before);
  }

  /** Decides something on the way of a drag; {@link #decide} ends it. */
  public void drag(String words, UnaryOperator<Decisions> change) {
    Decisions before = history.now();
    history.drag(words, change.apply(before));
    decided(before);
  }

  /** Whether a drag is on its way. */
  public boolean isDragging() {
    return history.isLive();
  }

  public void undo() {
    Decisions before = history.now();
    history.undo();
    decided(before);
  }

  public void redo() {
    Decisions before = history.now();
    history.redo();
    decided(before);
  }

  private void publish() {
    decisions.set(history.now());
    toUndo.set(history.toUndo());
    toRedo.set(history.toRedo());
  }
}
