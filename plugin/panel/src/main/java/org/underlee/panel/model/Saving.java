package org.underlee.panel.model;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.underlee.panel.host.Host;
import org.underlee.report.TakeoffCsv;
import org.underlee.report.TakeoffJson;
import org.underlee.report.TakeoffXlsx;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.writeback.FilesRead;
import org.underlee.writeback.SafeSave;

/** Everything that leaves the panel: the model with the assembly, or without it, and exports. */
public final class Saving implements AutoCloseable {
  private final Host host;
  private final Session session;
  private final Newest saving;
  private final ReadOnlyStringWrapper busyWith = new ReadOnlyStringWrapper("");
  private final ReadOnlyStringWrapper message = new ReadOnlyStringWrapper("");
  private final ReadOnlyObjectWrapper<Optional<Problem>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final Deque<Path> written = new ArrayDeque<>();

  Saving(Host host, Session session, Executor screen) {
    this.host = host;
    this.session = session;
    saving = new Newest("saving", screen);
    session.decisions().addListener((o, before, now) -> problem.set(Optional.empty()));
    session.model().addListener((o, before, now) -> forget());
  }

  private void forget() {
    problem.set(Optional.empty());
    message.set("");
    written.clear();
  }

  /** What is being written; empty at rest. */
  ReadOnlyStringProperty busyWith() {
    return busyWith.getReadOnlyProperty();
  }

  /** Stops what is being written; the files stay as they were. */
  void cancel() {
    saving.cancel();
    busyWith.set("");
  }

  /** The last thing that was done, in words. */
  public ReadOnlyStringProperty message() {
    return message.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<Optional<Problem>> problem() {
    return problem.getReadOnlyProperty();
  }

  private Optional<Design> wholeDesign() {
    return session.result().get().filter(Result::isWhole).flatMap(Result::design);
  }

  /** Whether there is a design of the newest decisions. */
  public boolean canWrite() {
    return wholeDesign().isPresent();
  }

  /** What would be written; empty while there is no design of the newest decisions. */
  public Optional<Writing> preview() {
    return wholeDesign().map(Writing::of);
  }

  /** Lets the host put the design in place. */
  public void write(Path target, boolean inPlace) {
    wholeDesign()
        .ifPresent(
            design -> {
              String words = Writing.of(design).words();
              Host.Change change = new Host.Change(words, design, target, inPlace);
              FilesRead read = session.filesRead();
              run(
                  "Writing " + target.getFileName(),
                  () -> {
                    (inPlace ? read.without(DecidedFiles.OPEN_MODEL) : read).requireApart(target);
                    if (!inPlace) {
                      FileKind.of(target, FileKind.MODELS);
                    }
                    host.apply(change);
                    return wrote(target) + ": " + words + ".";
                  },
                  () -> written.push(target));
            });
  }

  public void strip(Path target) {
    String done = wrote(target) + " without the assembly.";
    session
        .model()
        .get()
        .ifPresent(m -> save(target, FileKind.MODELS, () -> DeckRun.strip(m, target), done));
  }

  /** Whether something was written of the open model that can be taken back. */
  public boolean canUndoWrite() {
    return !written.isEmpty();
  }

  /** Takes the last write of the open model back. */
  public void undoWrite() {
    String name = String.valueOf(written.element().getFileName());
    run(
        "Taking back what was written to " + name,
        () ->
            host.undo()
                ? name + " is again what it was before the last write."
                : "There is no write to take back.",
        written::poll);
  }

  /** Writes the takeoff as CSV, XLSX or JSON, by the file's ending. */
  public void export(Path target) {
    wholeDesign()
        .ifPresent(
            design ->
                save(
                    target,
                    FileKind.TAKEOFFS,
                    () -> new SafeSave().plain(target, target, true, takeoff(design, target))));
  }

  private static byte[] takeoff(Design design, Path target) {
    return switch (FileKind.of(target, FileKind.TAKEOFFS)) {
      case XLSX -> TakeoffXlsx.write(design);
      case CSV -> TakeoffCsv.write(design).getBytes(StandardCharsets.UTF_8);
      default -> TakeoffJson.write(design).getBytes(StandardCharsets.UTF_8);
    };
  }

  /** Work that ends in a file. */
  interface Job {
    void run() throws IOException;
  }

  private static String wrote(Path target) {
    return "Wrote " + target.getFileName();
  }

  /** As {@link #save(Path, List, Job, String)}, and says that it was written. */
  void save(Path target, List<FileKind> kinds, Job job) {
    save(target, kinds, job, wrote(target) + ".");
  }

  /**
   * Writes a file, unless it is one of those that the panel reads, or its ending is of no kind.
   *
   * @param kinds that it may be
   */
  void save(Path target, List<FileKind> kinds, Job job, String done) {
    FilesRead read = session.filesRead();
    run(
        "Writing " + target.getFileName(),
        () -> {
          read.requireApart(target);
          FileKind.of(target, kinds);
          job.run();
          return done;
        });
  }

  /**
   * Writes beside the screen's thread.
   *
   * @param words what is being done
   * @param job says what was done
   */
  void run(String words, Callable<String> job) {
    run(words, job, () -> {});
  }

  private void run(String words, Callable<String> job, Runnable after) {
    problem.set(Optional.empty());
    busyWith.set(words);
    saving.inTurn(
        job,
        said -> {
          busyWith.set("");
          after.run();
          message.set(said);
          host.message(said);
        },
        e -> {
          busyWith.set("");
          problem.set(Optional.of(Problem.of(e)));
        });
  }

  @Override
  public void close() {
    saving.close();
  }
}
