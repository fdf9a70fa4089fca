package org.underlee.panel.model;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ObservableValue;
import org.jspecify.annotations.Nullable;
import org.underlee.clash.Cause;
import org.underlee.clash.IssueRegister;
import org.underlee.clash.IssueRegister.Entry;
import org.underlee.clash.Tracked;
import org.underlee.report.bcf.BcfVersion;
import org.underlee.report.bcf.BcfWriter;
import org.underlee.run.Coordination;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.writeback.SafeSave;

/**
 * What the assembly meets, in its own model and in those of services. Found beside the screen's
 * thread, and only while someone wants to see it.
 */
public final class Services implements AutoCloseable {
  private final Session session;
  private final Saving saving;
  private final ObservableValue<UnitSystem> units;
  private final Newest finding;
  private final ReadOnlyObjectWrapper<Optional<Coordination>> coordination =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Problem>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyBooleanWrapper busy = new ReadOnlyBooleanWrapper();
  private @Nullable Design foundFor;
  private boolean wanted;

  Services(Session session, Saving saving, ObservableValue<UnitSystem> units, Executor screen) {
    this.session = session;
    this.saving = saving;
    this.units = units;
    finding = new Newest("looking for issues", screen);
    session.result().addListener((o, before, now) -> find());
  }

  /** The newest that is known; one of an older design stays while another is being made. */
  public ReadOnlyObjectProperty<Optional<Coordination>> coordination() {
    return coordination.getReadOnlyProperty();
  }

  public ReadOnlyObjectProperty<Optional<Problem>> problem() {
    return problem.getReadOnlyProperty();
  }

  public ReadOnlyBooleanProperty busy() {
    return busy.getReadOnlyProperty();
  }

  /** Whether someone looks. */
  public void want(boolean now) {
    wanted = now;
    find();
  }

  /** Stops looking; {@link #want} looks again. */
  void cancel() {
    finding.cancel();
    foundFor = null;
    busy.set(false);
  }

  /** Whether someone wants issues that were not looked for to the end. */
  boolean canGoOn() {
    boolean whole = session.result().get().filter(Result::isWhole).isPresent();
    return wanted && whole && foundFor == null && !busy.get();
  }

  /** Looks again for what was not looked for to the end. */
  void goOn() {
    find();
  }

  private void find() {
    Optional<Result> result = session.result().get();
    if (result.isEmpty()) {
      cancel();
      coordination.set(Optional.empty());
      return;
    }
    Optional<Design> design = result.filter(Result::isWhole).flatMap(Result::design);
    if (wanted && design.isPresent() && isOther(design.get())) {
      find(design.get());
    }
  }

  /** Designs are large: that very one is meant, not an equal one. */
  @SuppressWarnings("ReferenceEquality")
  private boolean isOther(Design design) {
    return design != foundFor;
  }

  private void find(Design design) {
    foundFor = design;
    busy.set(true);
    problem.set(Optional.empty());
    finding.run(
        () -> DeckRun.coordinate(design, IssueRegister.EMPTY),
        found -> {
          busy.set(false);
          coordination.set(found);
        },
        e -> {
          busy.set(false);
          problem.set(Optional.of(Problem.of(e)));
        });
  }

  /** The issues to show: what is to be done first, then what was accepted; by cause. */
  public List<ServiceIssue> issues() {
    Decisions now = session.decisions().get();
    Names names = Names.of(session.result().get());
    List<ServiceIssue> all =
        coordination.get().stream()
            .flatMap(c -> c.issues().stream())
            .map(t -> ServiceIssue.of(t, now, names, units.getValue()))
            .toList();
    return Stream.concat(
            all.stream().filter(i -> i.accepted().isEmpty()),
            all.stream().filter(i -> i.accepted().isPresent()))
        .toList();
  }

  /** How many there are, for the head of the list. */
  public String count() {
    if (busy.get()) {
      return "Looking for issues …";
    }
    List<ServiceIssue> all = issues();
    long open = all.stream().filter(i -> i.accepted().isEmpty()).count();
    return coordination.get().isEmpty()
        ? ""
        : open + " to be dealt with, " + (all.size() - open) + " accepted";
  }

  /** Why the list is empty: nothing is met only where something was looked at. */
  public String state() {
    if (busy.get()) {
      return "Looking for issues …";
    }
    if (coordination.get().isEmpty()) {
      return "Nothing was looked for yet.";
    }
    int models = session.servicesRead().size();
    return models == 0
        ? "No model of services "
            + (session.decisions().get().services().isEmpty() ? "is added" : "could be read")
            + ": the assembly was held against its own model alone, and"
            + " meets nothing in it."
        : "The assembly meets nothing in its own model and in "
            + (models == 1 ? "1 model of services." : models + " models of services.");
  }

  /** Accepts an issue for a reason, or opens it again when the reason is blank. */
  public void accept(ServiceIssue issue, String reason) {
    session.decide(
        reason.isBlank() ? "Reopen an issue" : "Accept an issue",
        d -> d.accepting(issue.key(), reason));
  }

  /** Takes a way out, as one step to undo. */
  public void take(ServiceIssue.Way way) {
    way.decisions()
        .ifPresent(next -> session.decide("Lay out around the services", before -> next));
  }

  /** Whether there is a design whose issues can be written. */
  public boolean canExport() {
    return wholeDesign().isPresent();
  }

  private Optional<Design> wholeDesign() {
    return session.result().get().filter(Result::isWhole).flatMap(Result::design);
  }

  /**
   * Writes the issues of the newest design as BCF, or renews the file when there is one; looks for
   * them first where nobody has.
   */
  public void exportBcf(Path target) {
    Decisions decisions = session.decisions().get();
    wholeDesign()
        .ifPresent(
            design -> {
              Optional<Coordination> known =
                  coordination.get().filter(c -> !isOther(design) && !busy.get());
              saving.save(
                  target,
                  FileKind.BCF,
                  () ->
                      new SafeSave()
                          .plain(target, target, true, bcf(design, known, decisions, target)));
            });
  }

  private static byte[] bcf(
      Design design, Optional<Coordination> known, Decisions decisions, Path target)
      throws IOException {
    Coordination first = known.orElseGet(() -> coordinated(design, IssueRegister.EMPTY));
    Coordination found = coordinated(design, register(first, decisions));
    return Files.exists(target)
        ? BcfWriter.renew(found, Files.readAllBytes(target), target.getFileName().toString())
        : BcfWriter.write(found, BcfVersion.V2_1);
  }

  private static Coordination coordinated(Design design, IssueRegister register) {
    return DeckRun.coordinate(design, register)
        .orElseThrow(() -> new IllegalStateException("nothing is laid out, so nothing is hit"));
  }

  /** What was accepted, in the form in which issues are followed. */
  private static IssueRegister register(Coordination found, Decisions decisions) {
    List<Entry> entries =
        found.issues().stream().flatMap(t -> entry(t, decisions).stream()).toList();
    return new IssueRegister(IssueRegister.SCHEMA, true, entries);
  }

  private static Optional<Entry> entry(Tracked issue, Decisions decisions) {
    String key = ServiceIssue.key(issue);
    return Optional.ofNullable(decisions.accepted().get(key))
        .map(Acceptance::reason)
        .map(
            reason ->
                new Entry(
                    issue.id(),
                    issue.cause().word(),
                    issue.title(),
                    Tracked.Status.ACCEPTED.word(),
                    reason,
                    ""));
  }

  /** What a cause means, as a head over its issues. */
  public static String words(String cause) {
    for (Cause c : Cause.values()) {
      if (c.word().equals(cause)) {
        return switch (c) {
          case INTERSECT -> "Fills the same space";
          case SWING -> "In the swing of a door";
          case HEADROOM -> "Low over a stair";
          case DUPLICATE -> "There twice";
          case HIDDEN -> "Hidden by the assembly";
          case TOO_NEAR -> "Nearer than the clearance";
        };
      }
    }
    return cause;
  }

  @Override
  public void close() {
    finding.close();
  }
}
