package org.underlee.run.batch;

import java.util.OptionalDouble;

/**
 * What became of one model of many.
 *
 * @param file its path below the folder that was named, with the folder's name before it
 * @param sha256 of its bytes; empty where they could not be read
 * @param message why there is no result; empty where there is one
 */
public record ModelResult(
    String file, String sha256, Outcome outcome, Counts counts, String message) {

  /** How it ended. */
  public enum Outcome {
    /** There is a result. */
    DONE,
    /** The model is of no use to the job: it cannot be read, or there is nothing to work on. */
    REFUSED,
    /** The result could not be saved; nothing was changed. */
    NOT_WRITTEN,
    /** The program's own fault. */
    FAULT;

    /** The word used in files. */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * What is in the model, and what was made of it.
   *
   * @param parts of the assembly
   * @param dryFraction part of the deck in scope whose rain reaches an outlet; empty where none was
   *     proved
   */
  public record Counts(
      int decks,
      int fields,
      int bays,
      int parts,
      OptionalDouble dryFraction,
      int notes,
      int warnings,
      int errors) {
    static final Counts NONE = new Counts(0, 0, 0, 0, OptionalDouble.empty(), 0, 0, 0);
  }

  static ModelResult without(String file, String sha256, Outcome outcome, String message) {
    return new ModelResult(file, sha256, outcome, Counts.NONE, message);
  }

  public boolean isDone() {
    return outcome == Outcome.DONE;
  }
}
