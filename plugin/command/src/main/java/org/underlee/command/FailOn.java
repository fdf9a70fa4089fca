package org.underlee.command;

import java.util.Optional;
import org.underlee.finding.Level;

/** What a run ends with 1 for. */
enum FailOn {
  NOTE(Optional.of(Level.NOTE)),
  WARNING(Optional.of(Level.WARNING)),
  ERROR(Optional.of(Level.ERROR)),
  /** An issue with the services that was not there before. */
  NEW(Optional.empty());

  private final Optional<Level> least;

  FailOn(Optional<Level> least) {
    this.least = least;
  }

  boolean isMetBy(Level level) {
    return least.filter(l -> level.compareTo(l) >= 0).isPresent();
  }
}
