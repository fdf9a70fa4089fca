package org.underlee.server;

/**
 * The server cannot be reached, refuses, or fails. The message says what; the advice, what to do.
 */
public sealed class ServerException extends RuntimeException permits Overtaken {
  private static final long serialVersionUID = 1;

  private final String what;
  private final String advice;

  public ServerException(String message, String advice) {
    super(message);
    this.what = message;
    this.advice = advice;
  }

  public String what() {
    return what;
  }

  public String advice() {
    return advice;
  }
}
