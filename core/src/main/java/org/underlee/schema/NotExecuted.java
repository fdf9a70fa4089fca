package org.underlee.schema;

/** An expression cannot be evaluated: it needs what this program does not know, or too long. */
final class NotExecuted extends RuntimeException {
  private static final long serialVersionUID = 1;

  NotExecuted(String why) {
    super(why);
  }
}
