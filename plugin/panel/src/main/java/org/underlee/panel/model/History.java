package org.underlee.panel.model;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * The states of a value, back to the first and forward to what was undone. A drag is one step: its
 * live states replace one another.
 */
public final class History<T> {
  private record Step<T>(String words, T before) {}

  private final Deque<Step<T>> done = new ArrayDeque<>();
  private final Deque<Step<T>> undone = new ArrayDeque<>();
  private T now;
  private boolean live;

  public History(T first) {
    this.now = first;
  }

  public T now() {
    return now;
  }

  /**
   * One step.
   *
   * @param words what is done, for people: {@code Set the fall to 1:64}
   */
  public void put(String words, T next) {
    if (!live && !next.equals(now)) {
      done.push(new Step<>(words, now));
    }
    live = false;
    step(next);
  }

  /** A state on the way of a drag; {@link #put} ends it. */
  public void drag(String words, T next) {
    if (!live) {
      done.push(new Step<>(words, now));
      live = true;
    }
    step(next);
  }

  private void step(T next) {
    if (!next.equals(now)) {
      undone.clear();
    }
    now = next;
  }

  /** Whether a drag is on its way. */
  public boolean isLive() {
    return live;
  }

  /** What undoing would take back. */
  public Optional<String> toUndo() {
    return Optional.ofNullable(done.peek()).map(Step::words);
  }

  public Optional<String> toRedo() {
    return Optional.ofNullable(undone.peek()).map(Step::words);
  }

  /** One step back; stays where there is none. */
  public T undo() {
    return move(done, undone);
  }

  public T redo() {
    return move(undone, done);
  }

  /**
   * Takes the last step back for good: neither it nor what followed it can be done again.
   *
   * @return whether there was one
   */
  public boolean takeBack() {
    live = false;
    if (done.isEmpty()) {
      return false;
    }
    now = done.pop().before;
    undone.clear();
    return true;
  }

  private T move(Deque<Step<T>> from, Deque<Step<T>> to) {
    live = false;
    if (!from.isEmpty()) {
      Step<T> step = from.pop();
      to.push(new Step<>(step.words, now));
      now = step.before;
    }
    return now;
  }
}
