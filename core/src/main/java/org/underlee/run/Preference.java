package org.underlee.run;

import java.util.Comparator;

/** What counts among arrangements that keep as much dry. */
public enum Preference {
  /** Fewest parts cut. */
  CUTS,
  /** Greatest headroom. */
  HEADROOM,
  /** Fewest lengths and pieces to buy. */
  PIECES,
  /** Steepest fall. */
  FALL;

  Comparator<Arrangement> order() {
    return switch (this) {
      case CUTS -> Comparator.comparingInt(Arrangement::partsCut);
      case HEADROOM -> Comparator.comparingDouble(a -> -a.headroomOrNone());
      case PIECES -> Comparator.comparingInt(Arrangement::bought);
      case FALL -> Comparator.comparingDouble(a -> -a.fall());
    };
  }
}
