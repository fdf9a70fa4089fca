package org.underlee.finding;

/**
 * The input cannot be used as it is. The message says where and what is wrong; the advice, what to
 * do.
 */
public final class InputException extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final transient Place place;
  private final String advice;

  public InputException(Place place, String message, String advice) {
    super(place.equals(Place.NOWHERE) ? message : place + ": " + message);
    this.place = place;
    this.advice = advice;
  }

  public Place place() {
    return place == null ? Place.NOWHERE : place;
  }

  public String advice() {
    return advice;
  }
}
