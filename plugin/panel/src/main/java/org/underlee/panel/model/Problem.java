package org.underlee.panel.model;

import org.underlee.finding.InputException;
import org.underlee.writeback.NotWrittenException;

/** Why something did not work, and what to do. */
public record Problem(String message, String advice) {
  /** What is wrong and what to do, one after the other. */
  public String words() {
    boolean ended = message.endsWith(".") || message.endsWith("!") || message.endsWith("?");
    return message + (ended ? " " : ". ") + advice;
  }

  static Problem of(Throwable e) {
    if (e instanceof InputException input) {
      return new Problem(String.valueOf(input.getMessage()), input.advice());
    }
    if (e instanceof NotWrittenException save) {
      return new Problem(String.valueOf(save.getMessage()), save.advice());
    }
    if (e instanceof OutOfMemoryError) {
      return new Problem(
          "The model needs more memory than Java was given.",
          "Start with more, such as -Xmx4g, or open a smaller model.");
    }
    return new Problem(
        "This is a fault in the program, not in your file: " + e,
        "Please report it with the model, if you can.");
  }
}
