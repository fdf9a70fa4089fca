package org.underlee.bay;

import java.util.Locale;

/** How a crossing goes through the space of a bay. */
public enum Way {
  /** Steeply, through the plane of the pan. */
  THROUGH,
  /** With the bay, inside it. */
  ALONG,
  /** From bay to bay. */
  ACROSS;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
