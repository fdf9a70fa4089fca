package org.underlee.finding;

/** How much a finding matters: an error must be put right before work starts. */
public enum Level {
  NOTE,
  WARNING,
  ERROR;

  /** The word used in files. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
