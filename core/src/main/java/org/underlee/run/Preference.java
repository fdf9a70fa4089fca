package org.underlee.run;

import java.util.Comparator;

/** What counts among arrangements that keep as much dry. */
public enum Preference {
  /** Fewest parts cut. */
  CUTS(Comparator.comparingInt(Arrangement::partsCut)),
  /** Greatest headroom. */
  HEADROOM(Comparator.comparingDouble(a -> -a.headroomOrNone())),
  /** Fewest lengths and pieces to buy. */
  PIECES(Comparator.comparingInt(Arrangement::bought)),
  /** Steepest fall. */
  FALL(Comparator.comparingDouble(a -> -a.fall()));

  private final transient Comparator<Arrangement> order;

  Preference(Comparator<Arrangement> order) {
    this.order = order;
  }

  Comparator<Arrangement> order() {
    return order;
  }
}
