package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.underlee.finding.InputException;
import org.underlee.layout.Layout;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.FieldByField;

/**
 * One open model, what was decided about it, and the newest result. Long work runs beside the
 * screen's thread; the last good result stays until a newer one is there. All methods belong to the
 * screen's thread.
 */
public final class Session implements AutoCloseable {
  private static final String READING = "Reading the model and its framing";
  private static final String LAYING_OUT = "Laying out the decks";
  private static final String DESIGNING = "Checking, counting and proving the design";

  private final ReadOnlyObjectWrapper<Optional<Path>> model = wrapper(Optional.empty());
  private final ReadOnlyObjectWrapper<Decisions> decisions = wrapper(Decisions.FIRST);
  private final ReadOnlyObjectWrapper<Optional<Result>> result = wrapper(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Problem>> problem = wrapper(Optional.empty());
  private final ReadOnlyBooleanWrapper stale = new ReadOnlyBooleanWrapper();
  private final ReadOnlyStringWrapper busyWith = new ReadOnlyStringWrapper("");
  private final ReadOnlyObjectWrapper<Optional<String>> toUndo = wrapper(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<String>> toRedo = wrapper(Optional.empty());
  private final Newest reading;
  private final Newest layingOut;
  private final Newest designing;
  private Optional<FieldByField> fields = Optional.empty();
  private Supplier<Optional<String>> atHand = Optional::empty;
  private Optional<Decisions> refused = Optional.empty();
  private LongSupplier pictured = () -> Long.MAX_VALUE;
  private boolean isReading;
  private boolean isHeld;
  private long edition;
  private History<Decisions> history = new History<>(Decisions.FIRST);

  /**
   * @param screen runs what it is given on the screen's thread, later
   */
  public Session(Executor screen) {
    reading = new Newest("reading", screen);
    layingOut = new Newest("laying out", screen);
    designing = new Newest("designing", screen);
  }

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

  /** Opens a model with what was decided about it before; the result of another one goes. */
  public void open(Path file, Decisions before) {
    cancel();
    result.set(Optional.empty());
    stale.set(false);
    model.set(Optional.of(file));
    history = new History<>(before);
    publish();
    read(file, before);
  }

  /** Decides something, as one step to undo. */
  public void decide(String words, UnaryOperator<Decisions> change) {
    Decisions before = history.now();
    history.put(words, change.apply(before));
    follow(before);
  }

  /** Decides something on the way of a drag; {@link #decide} ends it. */
  public void drag(String words, UnaryOperator<Decisions> change) {
    Decisions before = history.now();
    history.drag(words, change.apply(before));
    follow(before);
  }

  /** Whether a drag is on its way. */
  public boolean isDragging() {
    return history.isLive();
  }

  public void undo() {
    Decisions before = history.now();
    history.undo();
    follow(before);
  }

  public void redo() {
    Decisions before = history.now();
    history.redo();
    follow(before);
  }

  /** Stops what is being worked on; what is shown stays. */
  public void cancel() {
    reading.cancel();
    layingOut.cancel();
    designing.cancel();
    isReading = false;
    busyWith.set("");
    stale.set(stale.get() || isHeld || result.get().filter(r -> !r.isLaidOut()).isPresent());
    isHeld = false;
  }

  private void publish() {
    decisions.set(history.now());
    toUndo.set(history.toUndo());
    toRedo.set(history.toRedo());
  }

  private void follow(Decisions before) {
    publish();
    Decisions now = history.now();
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
      fields.ifPresent(all -> layOutAtPace(all, history.now()));
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
    reading.run(
        () -> Opening.of(file, by),
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
    if (result.get().isEmpty()) {
      result.set(Optional.of(opening.framed(history.now(), ++edition)));
    }
    layOut(opening.fields(), history.now());
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
    Optional<String> first = atHand.get();
    layingOut.<Layout>follow(
        (screen, isNewest) ->
            all.layOut(
                new FieldByField.Wish(by.scope(), by.chosenKit(), by.storm()),
                shown.map(Result::layout),
                first,
                new LayoutSteps(
                    isNewest,
                    (soFar, words) ->
                        screen.accept(() -> shown(all, by, soFar.filter(l -> inSteps), words)))),
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
    boolean last = refused.filter(r -> r.designsAs(history.now())).isPresent();
    if (last && !isDragging() && history.takeBack()) {
      refused = Optional.empty();
      publish();
      Optional<Problem> why = problem.get();
      fields.ifPresent(all -> layOut(all, history.now()));
      problem.set(why);
    }
  }

  private Result result(FieldByField all, Decisions by, Layout layout, Progress progress) {
    return new Result(by, all.survey(), layout, ++edition, lastDesign(), progress);
  }

  /** Some fields are there: where a person waits for them, they are shown. */
  private void shown(FieldByField all, Decisions by, Optional<Layout> soFar, String words) {
    boolean newest = by.designsAs(history.now());
    soFar
        .map(l -> result(all, newest ? history.now() : by, l, Progress.PARTLY))
        .ifPresent(r -> result.set(Optional.of(r)));
    if (newest) {
      busyWith.set(LAYING_OUT + words);
    }
  }

  private Optional<Design> lastDesign() {
    return result.get().flatMap(Result::design);
  }

  private void laidOut(Result next) {
    boolean newest = next.decisions().designsAs(history.now());
    result.set(Optional.of(newest ? next.with(history.now()) : next));
    designAtRest();
  }

  /** A hand that drags needs the parts alone; where it rests they are checked and counted. */
  private void designAtRest() {
    result
        .get()
        .filter(r -> !isDragging() && r.progress() == Progress.LAID_OUT)
        .filter(r -> r.decisions().designsAs(history.now()))
        .ifPresent(this::design);
  }

  private void design(Result next) {
    busyWith.set(DESIGNING);
    designing.run(
        () ->
            DeckRun.design(
                next.survey(), next.decisions().scope(), next.layout(), next.decisions().storm()),
        design -> end(next.with(design)),
        this::fail);
  }

  private void begin(String words) {
    stale.set(result.get().filter(Result::isLaidOut).isPresent() || stale.get());
    problem.set(Optional.empty());
    busyWith.set(words);
  }

  /** What a hand has dragged on from meanwhile is not shown: its own layout has come or comes. */
  private void end(Result whole) {
    if (whole.decisions().designsAs(history.now())) {
      result.set(Optional.of(whole.with(history.now())));
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
    reading.close();
    layingOut.close();
    designing.close();
  }
}
