package org.underlee.panel.model;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyBooleanProperty;
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

  private final Session session;
  private final Services services;

  private Running(Session session, Services services) {
    this.session = session;
    this.services = services;
  }

  /** All that work beside the screen's thread and are waited for. */
  static Running of(
      Session session, Saving saving, Services services, Choices choices, Resyncing resyncing) {
    Running running = new Running(session, services);
    running.add(session.busyWith(), session::cancel, running::afterTheSession);
    running.add(saving.busyWith(), saving::cancel, () -> "The file is as it was.");
    running.add(
        told(services.busy(), "Looking for issues"),
        services::cancel,
        () -> "The issues shown are those of before; F5 looks again.");
    running.add(
        told(choices.busy(), "Comparing arrangements"),
        choices::cancel,
        () -> "Press Compare to begin again.");
    running.add(
        told(resyncing.busy(), "Taking the assembly over"),
        resyncing::cancel,
        () -> "Nothing was taken over.");
    return running;
  }

  private static ObservableValue<String> told(ReadOnlyBooleanProperty busy, String words) {
    return busy.map(b -> b ? words : "");
  }

  private String afterTheSession() {
    if (session.result().get().isEmpty()) {
      return "F5 reads the model again; Ctrl+O opens another.";
    }
    return session.toUndo().get().isPresent()
        ? "What is shown is from before: F5 goes on, Ctrl+Z takes the last decision back."
        : "Not everything is there yet: F5 goes on.";
  }

  /** Whether something was stopped, or did not succeed, that could be worked out. */
  public boolean canGoOn() {
    return session.canGoOn() || services.canGoOn();
  }

  /** Goes on with what was stopped. */
  public void goOn() {
    session.goOn();
    services.goOn();
  }

  /**
   * One who works beside the screen's thread.
   *
   * @param of what it does; empty at rest
   * @param whenStopped what is so after it was stopped, and how to go on
   */
  private void add(ObservableValue<String> of, Runnable cancel, Supplier<String> whenStopped) {
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
