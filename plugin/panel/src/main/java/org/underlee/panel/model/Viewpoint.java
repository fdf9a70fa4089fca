package org.underlee.panel.model;

import org.underlee.geom.Vec3;

/** The usual sides to look from, as seen by someone who faces the first field's low end. */
public enum Viewpoint {
  FROM_BELOW("From below", -0.5, 0.75, -0.75),
  FROM_ABOVE("From above", -0.5, 0.75, 0.7),
  TOP("Top", 0, 0, 1),
  BOTTOM("Underside", 0, 0, -1),
  FRONT("Front", 0, 1, 0),
  SIDE("Side", -1, 0, 0);

  private final String words;
  private final double across;
  private final double along;
  private final double up;

  Viewpoint(String words, double across, double along, double up) {
    this.words = words;
    this.across = across;
    this.along = along;
    this.up = up;
  }

  /** From the deck to the viewer, in the frame of the first field. */
  Vec3 eye() {
    return new Vec3(across, along, up);
  }

  @Override
  public String toString() {
    return words;
  }
}
