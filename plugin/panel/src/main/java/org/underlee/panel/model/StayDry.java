package org.underlee.panel.model;

import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.underlee.layout.DryZone;
import org.underlee.run.DryZones;
import org.underlee.run.Survey;

/** What a person says must stay dry; an element of that name is looked for beside the screen. */
public final class StayDry implements AutoCloseable {
  private static final String WORDS = "Say what must stay dry";

  private final Session session;
  private final Newest finding;
  private final ReadOnlyObjectWrapper<Optional<Problem>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  StayDry(Session session, Executor screen) {
    this.session = session;
    finding = new Newest("finding what must stay dry", screen);
  }

  /** Why the last text could not be used. */
  public ReadOnlyObjectProperty<Optional<Problem>> problem() {
    return problem.getReadOnlyProperty();
  }

  /** The zone that was decided on, by its corners; empty when everything must stay dry. */
  public String text() {
    return session.decisions().get().wishes().dryZone().map(DryZone::text).orElse("");
  }

  /** Corners, or the name or GlobalId of a slab or space; blank for everything below the decks. */
  public void say(String text) {
    problem.set(Optional.empty());
    if (text.isBlank()) {
      session.decide(WORDS, d -> d.withDryZone(Optional.empty()));
      return;
    }
    session.result().get().map(Result::survey).ifPresent(s -> find(s, text.strip()));
  }

  private void find(Survey survey, String text) {
    finding.run(
        () -> DryZones.of(survey, text),
        zone -> session.decide(WORDS, d -> d.withDryZone(Optional.of(zone))),
        e -> problem.set(Optional.of(Problem.of(e))));
  }

  @Override
  public void close() {
    finding.close();
  }
}
