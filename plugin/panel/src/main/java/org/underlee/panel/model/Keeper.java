package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/**
 * Writes settings and decisions beside the screen's thread, at once and one after the other; of
 * what changes while something is written, the newest. What is left is written before it closes.
 */
final class Keeper implements AutoCloseable {
  private static final long PATIENCE_SECONDS = 10;

  private final Memory memory;
  private final Executor screen;
  private final ReadOnlyStringWrapper lost = new ReadOnlyStringWrapper("");
  private final Map<String, BooleanSupplier> waiting = new LinkedHashMap<>();
  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "keeping");
            thread.setDaemon(true);
            return thread;
          });

  Keeper(Memory memory, Executor screen) {
    this.memory = memory;
    this.screen = screen;
  }

  /** Why nothing could be kept when it was last tried, and what to do; empty where it could. */
  ReadOnlyStringProperty lost() {
    return lost.getReadOnlyProperty();
  }

  void keep(Settings settings) {
    put("settings", () -> memory.keep(settings));
  }

  void keep(Path model, Decisions decisions) {
    put(model.toString(), () -> memory.keep(model, decisions));
  }

  private void put(String what, BooleanSupplier writing) {
    synchronized (waiting) {
      waiting.put(what, writing);
    }
    worker.execute(() -> write(what));
  }

  private void write(String what) {
    Optional<BooleanSupplier> writing;
    synchronized (waiting) {
      writing = Optional.ofNullable(waiting.remove(what));
    }
    writing.map(BooleanSupplier::getAsBoolean).ifPresent(this::tell);
  }

  private void tell(boolean kept) {
    String words =
        kept
            ? ""
            : "What you decide is not kept: "
                + memory.folder()
                + " cannot be written to. Check the disk and the rights to that folder.";
    screen.execute(() -> lost.set(words));
  }

  @Override
  public void close() {
    worker.shutdown();
    try {
      if (!worker.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        worker.shutdownNow();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
