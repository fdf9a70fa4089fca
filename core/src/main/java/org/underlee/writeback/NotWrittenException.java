package org.underlee.writeback;

/** The output was not written; what stood at its place is as it was. */
public final class NotWrittenException extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final String advice;

  public NotWrittenException(String message, String advice) {
    super(message);
    this.advice = advice;
  }

  public NotWrittenException(String message, String advice, Throwable cause) {
    super(message, cause);
    this.advice = advice;
  }

  public String advice() {
    return advice;
  }
}
