package org.underlee.panel.model;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
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
              save(
                  target,
                  inPlace,
                  () -> host.apply(change),
                  "Wrote " + target.getFileName() + ": " + words + ".",
                  () -> written.push(target));
            });
  }

  public void strip(Path target) {
    String done = "Wrote " + target.getFileName() + " without the assembly.";
    session.model().get().ifPresent(m -> save(target, false, () -> DeckRun.strip(m, target), done));
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
                    false,
                    () -> new SafeSave().plain(target, target, true, takeoff(design, target)),
                    "Wrote " + target.getFileName() + "."));
  }

  private static byte[] takeoff(Design design, Path target) {
    String name = target.getFileName().toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".xlsx")) {
      return TakeoffXlsx.write(design);
    }
    String text = name.endsWith(".json") ? TakeoffJson.write(design) : TakeoffCsv.write(design);
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** Work that ends in a file. */
  interface Job {
    void run() throws IOException;
  }

  /**
   * Writes a file, unless it is one of those that the panel reads.
   *
   * @param inPlace whether it is meant to take the open model's place
   */
  void save(Path target, boolean inPlace, Job job, String done) {
    save(target, inPlace, job, done, () -> {});
  }

  private void save(Path target, boolean inPlace, Job job, String done, Runnable after) {
    FilesRead read = session.filesRead();
    run(
        "Writing " + target.getFileName(),
        () -> {
          (inPlace ? read.without(Decisions.OPEN_MODEL) : read).requireApart(target);
          job.run();
          return done;
        },
        after);
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
