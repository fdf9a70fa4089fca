package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.underlee.finding.InputException;
import org.underlee.layout.Layout;
import org.underlee.run.Design;
import org.underlee.run.FieldByField;
import org.underlee.writeback.FilesRead;

/**
 * One open model, what was decided about it, and the newest result. Long work runs beside the
 * screen's thread; the last good result stays until a newer one is there. All methods belong to the
 * screen's thread.
 */
public final class Session extends SessionState implements AutoCloseable {
  private static final String READING = "Reading the model and its framing";
  private static final String LAYING_OUT = "Laying out the decks";
  private static final String DESIGNING = "Checking, counting and proving the design";

  private final SessionWork work;
  private Optional<FieldByField> fields = Optional.empty();
  private Optional<Result> lastLaidOut = Optional.empty();
  private Supplier<Optional<String>> atHand = Optional::empty;
  private Optional<Decisions> refused = Optional.empty();
  private LongSupplier pictured = () -> Long.MAX_VALUE;
  private FilesRead alsoRead = FilesRead.NONE;
  private boolean isReading;
  private boolean isHeld;
  private long edition;

  /**
   * @param screen runs what it is given on the screen's thread, later
   */
  public Session(Executor screen) {
    work = new SessionWork(screen);
  }

  /** Opens a model with what was decided about it before; the result of another one goes. */
  public void open(Path file, Decisions before) {
    cancel();
    fields = Optional.empty();
    lastLaidOut = Optional.empty();
    alsoRead = FilesRead.NONE;
    leftOut.set(Map.of());
    result.set(Optional.empty());
    stale.set(false);
    model.set(Optional.of(file));
    begin(before);
    read(file, before);
  }

  /**
   * Stops what is being worked on. The last result that was laid out as a whole is shown again, and
   * is out of date.
   */
  public void cancel() {
    boolean some = isHeld || !busyWith.get().isEmpty();
    work.cancel();
    isReading = false;
    isHeld = false;
    busyWith.set("");
    if (some && result.get().isPresent()) {
      stale.set(true);
      lastLaidOut
          .filter(r -> result.get().filter(Result::isLaidOut).isEmpty())
          .ifPresent(r -> result.set(Optional.of(r)));
    }
  }

  /** Whether something was stopped, or did not succeed, that could be worked out. */
  public boolean canGoOn() {
    boolean whole = result.get().filter(Result::isWhole).isPresent() && !stale.get();
    return model.get().isPresent() && busyWith.get().isEmpty() && !whole;
  }

  /** Works out what was stopped or did not succeed. */
  public void goOn() {
    Decisions now = decided();
    if (!canGoOn()) {
      return;
    }
    if (fields.isEmpty()) {
      model.get().ifPresent(m -> read(m, now));
    } else if (result.get().filter(r -> r.isLaidOut() && isOf(r, now)).isPresent()) {
      designAtRest();
    } else {
      layOut(fields.get(), now);
    }
  }

  /** Lays out anew what is decided already: a file that it is made by may have changed. */
  void layOutAgain() {
    Decisions now = decided();
    if (fields.isPresent()) {
      layOut(fields.get(), now);
    } else {
      model.get().ifPresent(m -> read(m, now));
    }
  }

  private static boolean isOf(Result result, Decisions decisions) {
    return result.decisions().designsAs(decisions);
  }

  /** Notes a file that was read besides those that are decided on. */
  void reads(Path file, String as) {
    alsoRead = alsoRead.with(file, as);
  }

  /** Everything that was read for what is shown, none of which may be written over. */
  FilesRead filesRead() {
    return model
        .get()
        .map(m -> new DecidedFiles(decided(), m).read(alsoRead))
        .orElse(FilesRead.NONE);
  }

  @Override
  void follow(Decisions before) {
    Decisions now = decided();
    if (model.get().isEmpty()) {
      return;
    }
    if (now.equals(before) && !isHeld) {
      takeBackWhatIsRefused();
      designAtRest();
    } else if (result.get().isPresent() && now.designsAs(before) && !isHeld) {
      // a layout on its way brings its own decisions
      result.set(result.get().map(r -> r.decisions().designsAs(now) ? r.with(now) : r));
      designAtRest();
    } else if (fields.isPresent() && now.readsAs(before)) {
      layOutAtPace(fields.get(), now);
    } else if (!isReading || !now.readsAs(before)) {
      read(model.get().get(), now);
    }
  }

  /**
   * @param edition tells which {@link Result#edition} is ready to be drawn: a drag is laid out no
   *     further ahead, as what is never seen only takes from what is
   */
  void keepPaceWith(LongSupplier edition) {
    pictured = edition;
  }

  /** There is a newer picture: a step of a drag that waited for it goes on. */
  void pictured() {
    if (isHeld) {
      fields.ifPresent(all -> layOutAtPace(all, decided()));
    }
  }

  private void layOutAtPace(FieldByField all, Decisions by) {
    isHeld = isDragging() && pictured.getAsLong() < edition;
    if (!isHeld) {
      layOut(all, by);
    }
  }

  private void read(Path file, Decisions by) {
    begin(READING);
    isHeld = false;
    fields = Optional.empty();
    isReading = true;
    work.read(
        file,
        by,
        this::read,
        e -> {
          isReading = false;
          fail(e);
        });
  }

  /** The framing is shown at once; where there is a picture already, it stays until a newer one. */
  private void read(Opening opening) {
    isReading = false;
    fields = Optional.of(opening.fields());
    leftOut.set(opening.leftOut());
    if (result.get().isEmpty()) {
      result.set(Optional.of(opening.framed(decided(), ++edition)));
    }
    layOut(opening.fields(), decided());
  }

  /** Lines that the low ends can follow; none before a model is read. */
  List<String> lowEnds() {
    return fields.map(FieldByField::lowEnds).orElse(List.of());
  }

  /**
   * @param field tells the field that a person is at, whose deck is laid out first
   */
  void workAt(Supplier<Optional<String>> field) {
    atHand = field;
  }

  @SuppressWarnings("ReferenceEquality") // of another reading even where it is equal
  private void layOut(FieldByField all, Decisions by) {
    begin(LAYING_OUT);
    Optional<Result> shown = result.get().filter(r -> r.survey() == all.survey());
    boolean inSteps = isDragging() || shown.filter(r -> !r.isLaidOut()).isPresent();
    work.layOut(
        all,
        by,
        shown.map(Result::layout),
        atHand.get(),
        (soFar, words) -> shown(all, by, soFar.filter(l -> inSteps), words),
        layout -> laidOut(result(all, by, layout, Progress.LAID_OUT)),
        e -> refuse(by, e));
  }

  private void refuse(Decisions asked, Throwable e) {
    fail(e);
    refused = Optional.of(asked).filter(a -> e instanceof InputException);
    takeBackWhatIsRefused();
  }

  /** What cannot be laid out is not decided; why it cannot stays to be read. */
  private void takeBackWhatIsRefused() {
    boolean last = refused.filter(r -> r.designsAs(decided())).isPresent();
    if (last && !isDragging() && takeBack()) {
      refused = Optional.empty();
      Optional<Problem> why = problem.get();
      fields.ifPresent(all -> layOut(all, decided()));
      problem.set(why);
    }
  }

  private Result result(FieldByField all, Decisions by, Layout layout, Progress progress) {
    return new Result(by, all.survey(), layout, ++edition, lastDesign(), progress);
  }

  /** Some fields are there: where a person waits for them, they are shown. */
  private void shown(FieldByField all, Decisions by, Optional<Layout> soFar, String words) {
    boolean newest = by.designsAs(decided());
    soFar
        .map(l -> result(all, newest ? decided() : by, l, Progress.PARTLY))
        .ifPresent(r -> result.set(Optional.of(r)));
    if (newest) {
      busyWith.set(LAYING_OUT + words);
    }
  }

  private Optional<Design> lastDesign() {
    return result.get().flatMap(Result::design);
  }

  private void laidOut(Result next) {
    boolean newest = next.decisions().designsAs(decided());
    lastLaidOut = Optional.of(newest ? next.with(decided()) : next);
    result.set(lastLaidOut);
    designAtRest();
  }

  /** A hand that drags needs the parts alone; where it rests they are checked and counted. */
  private void designAtRest() {
    result
        .get()
        .filter(r -> !isDragging() && r.progress() == Progress.LAID_OUT)
        .filter(r -> r.decisions().designsAs(decided()))
        .ifPresent(this::design);
  }

  private void design(Result next) {
    busyWith.set(DESIGNING);
    work.design(next, design -> end(next.with(design)), this::fail);
  }

  private void begin(String words) {
    stale.set(result.get().filter(Result::isLaidOut).isPresent() || stale.get());
    problem.set(Optional.empty());
    busyWith.set(words);
  }

  /** What a hand has dragged on from meanwhile is not shown: its own layout has come or comes. */
  private void end(Result whole) {
    if (whole.decisions().designsAs(decided())) {
      lastLaidOut = Optional.of(whole.with(decided()));
      result.set(lastLaidOut);
      stale.set(false);
      busyWith.set("");
    }
  }

  private void fail(Throwable e) {
    problem.set(Optional.of(Problem.of(e)));
    busyWith.set("");
  }

  @Override
  public void close() {
    work.close();
  }
}
