package org.underlee.layout;

import org.underlee.bay.Bay;
import org.underlee.framing.JoistLine;
import org.underlee.geom.Linear;

/** The two sides of a bay, each with a joist line and what is fixed to its face. */
enum RailSide {
  /** The low-u side. */
  LEFT,
  RIGHT;

  /** +1 where the bay lies toward growing u. */
  int into() {
    return this == LEFT ? 1 : -1;
  }

  RailSide opposite() {
    return this == LEFT ? RIGHT : LEFT;
  }

  Linear face(Bay bay) {
    return this == LEFT ? bay.leftFace() : bay.rightFace();
  }

  JoistLine line(Bay bay) {
    return this == LEFT ? bay.left() : bay.right();
  }
}
