package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.value.ObservableValue;

/**
 * All work that a person may wait for, whoever does it: what it is in words, how it is stopped, and
 * what is so once it has been.
 */
public final class Running {
  private record Work(
      ObservableValue<String> words, Runnable cancel, Supplier<String> whenStopped) {
    boolean runs() {
      return !words.getValue().isEmpty();
    }
  }

  private final List<Work> all = new ArrayList<>();
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper stopped = new ReadOnlyStringWrapper("");

  /**
   * One who works beside the screen's thread.
   *
   * @param of what it does; empty at rest
   * @param whenStopped what is so after it was stopped, and how to go on
   */
  void add(ObservableValue<String> of, Runnable cancel, Supplier<String> whenStopped) {
    all.add(new Work(of, cancel, whenStopped));
    of.addListener((o, before, now) -> tell());
    tell();
  }

  private void tell() {
    words.set(all.stream().filter(Work::runs).findFirst().map(w -> w.words.getValue()).orElse(""));
    if (isRunning()) {
      stopped.set("");
    }
  }

  /** What is being worked on; empty at rest. */
  public ReadOnlyStringProperty words() {
    return words.getReadOnlyProperty();
  }

  /** What was stopped by hand and how to go on; empty once something runs again. */
  public ReadOnlyStringProperty stopped() {
    return stopped.getReadOnlyProperty();
  }

  public boolean isRunning() {
    return !words.get().isEmpty();
  }

  /** Stops all that runs. */
  public void cancel() {
    List<Work> now = all.stream().filter(Work::runs).toList();
    now.forEach(w -> w.cancel.run());
    List<String> told = now.stream().map(w -> w.whenStopped.get()).toList();
    if (!told.isEmpty()) {
      stopped.set("Stopped. " + String.join(" ", told));
    }
  }
}
