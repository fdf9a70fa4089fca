package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.underlee.layout.Layout;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.FieldByField;

/**
 * The long work of a session, beside the screen's thread: reading, laying out, and the rest of the
 * design. What is begun anew stops what comes after it and is on its way: it would be old.
 */
final class SessionWork implements AutoCloseable {
  private final Newest reading;
  private final Newest layingOut;
  private final Newest designing;

  /**
   * @param screen runs results on the screen's thread
   */
  SessionWork(Executor screen) {
    reading = new Newest("reading", screen);
    layingOut = new Newest("laying out", screen);
    designing = new Newest("designing", screen);
  }

  void read(Path file, Decisions by, Consumer<Opening> done, Consumer<Throwable> failed) {
    layingOut.cancel();
    designing.overtake();
    reading.run(() -> Opening.of(file, by), done, failed);
  }

  /**
   * Lays out.
   *
   * @param shown what is seen of fields until they are laid out
   * @param first the field whose deck comes first
   * @param seen told some fields, and how far it is in words
   */
  void layOut(
      FieldByField all,
      Decisions by,
      Optional<Layout> shown,
      Optional<String> first,
      BiConsumer<Optional<Layout>, String> seen,
      Consumer<Layout> done,
      Consumer<Throwable> failed) {
    designing.overtake();
    layingOut.<Layout>follow(
        (screen, isNewest) ->
            all.layOut(
                new FieldByField.Wish(by.scope(), by.chosenKit(), by.storm()),
                shown,
                first,
                new LayoutSteps(
                    isNewest, (soFar, words) -> screen.accept(() -> seen.accept(soFar, words)))),
        done,
        failed);
  }

  void design(Result laidOut, Consumer<Design> done, Consumer<Throwable> failed) {
    Decisions by = laidOut.decisions();
    designing.run(
        () -> DeckRun.design(laidOut.survey(), by.scope(), laidOut.layout(), by.storm()),
        done,
        failed);
  }

  /** Stops all of it. */
  void cancel() {
    reading.cancel();
    layingOut.cancel();
    designing.cancel();
  }

  @Override
  public void close() {
    reading.close();
    layingOut.close();
    designing.close();
  }
}
