package org.underlee.misbuilt.geom;

import org.underlee.misbuilt.units.ReadsTheClock;

/** With its neighbour, a cycle between packages. */
public final class CallsUnits {
  public static final String NAME = "geom".trim();

  private CallsUnits() {}

  public static String call() {
    return ReadsTheClock.everythingThatIsForbidden();
  }
}
