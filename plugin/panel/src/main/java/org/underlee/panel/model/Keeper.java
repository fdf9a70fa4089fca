package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;

/**
 * Writes settings and decisions beside the screen's thread, at once and one after the other; of
 * what changes while something is written, the newest. What is left is written before it closes.
 */
final class Keeper implements AutoCloseable {
  private static final long PATIENCE_SECONDS = 10;

  private final Memory memory;
  private final Map<String, Runnable> waiting = new LinkedHashMap<>();
  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "keeping");
            thread.setDaemon(true);
            return thread;
          });

  Keeper(Memory memory) {
    this.memory = memory;
  }

  void keep(Settings settings) {
    put("settings", () -> memory.keep(settings));
  }

  void keep(Path model, Decisions decisions) {
    put(model.toString(), () -> memory.keep(model, decisions));
  }

  private void put(String what, Runnable writing) {
    synchronized (waiting) {
      waiting.put(what, writing);
    }
    worker.execute(() -> write(what));
  }

  private void write(String what) {
    Optional<Runnable> writing;
    synchronized (waiting) {
      writing = Optional.ofNullable(waiting.remove(what));
    }
    writing.ifPresent(Runnable::run);
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
