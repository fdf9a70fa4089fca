package org.underlee.panel.model;

import java.util.List;
import java.util.Optional;
import org.underlee.run.Overrides;

/** What a person says that elements of the model are, in place of what was recognised. */
public final class RolesGiven {
  private final Session session;

  RolesGiven(Session session) {
    this.session = session;
  }

  /** What an element may be said to be. */
  public List<String> words() {
    return Overrides.words();
  }

  /** What was said of an element; empty when it is as it was recognised. */
  public Optional<String> of(String globalId) {
    return Optional.ofNullable(session.decisions().get().roles().get(globalId));
  }

  /** Whether something can be said of it: it is of the deck's own model. */
  public boolean canBeSaid(String globalId) {
    return session
        .result()
        .get()
        .flatMap(r -> r.element(globalId))
        .filter(e -> e.file().isEmpty())
        .isPresent();
  }

  /** Says what an element is, as one step to undo; empty takes it back. */
  public void say(String globalId, Optional<String> word) {
    if (!word.equals(of(globalId))) {
      session.decide("Say what an element is", d -> d.withRole(globalId, word));
    }
  }
}
