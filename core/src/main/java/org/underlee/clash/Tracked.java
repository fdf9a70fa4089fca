package org.underlee.clash;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * An issue over time.
 *
 * @param issue as found in this run; empty when it is gone
 * @param title for people, in metric units
 * @param reason why it was accepted, where it was
 * @param ways out of it
 */
public record Tracked(
    String id,
    Cause cause,
    Status status,
    String title,
    Optional<String> reason,
    Optional<Issue> issue,
    List<WayOut> ways) {
  public Tracked {
    ways = List.copyOf(ways);
  }

  /** Where an issue stands. */
  public enum Status {
    NEW,
    OPEN,
    ACCEPTED,
    GONE;

    /** The word used in files. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Whether someone still has to do something about it. */
  public boolean isPending() {
    return status == Status.NEW || status == Status.OPEN;
  }

  Tracked with(List<WayOut> found) {
    return new Tracked(id, cause, status, title, reason, issue, found);
  }
}
