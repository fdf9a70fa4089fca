package org.underlee.samples;

/** A right-handed frame: an origin and three unit axes at right angles. */
public record Frame(Xyz origin, Xyz x, Xyz y, Xyz z) {
  public static final Frame WORLD = new Frame(Xyz.ORIGIN, Xyz.X, Xyz.Y, Xyz.Z);

  /** The frame with the given first and second axis; the third follows. */
  public static Frame of(Xyz origin, Xyz x, Xyz y) {
    return new Frame(origin, x, y, x.cross(y));
  }

  public static Frame at(Xyz origin) {
    return new Frame(origin, Xyz.X, Xyz.Y, Xyz.Z);
  }

  /** Turned about the vertical, counter-clockwise seen from above. */
  public static Frame turned(Xyz origin, double degrees) {
    double cos = cos(degrees);
    double sin = cos(degrees - 90);
    return new Frame(origin, new Xyz(cos, sin, 0), new Xyz(-sin, cos, 0), Xyz.Z);
  }

  /** Exact at the quarter turns, so that an unturned deck has round numbers. */
  private static double cos(double degrees) {
    double turn = Math.abs(degrees % 360);
    if (turn == 90 || turn == 270) {
      return 0;
    }
    return turn == 180 ? -1 : StrictMath.cos(Math.toRadians(turn));
  }

  public Xyz point(Xyz local) {
    return origin.plus(direction(local));
  }

  public Xyz direction(Xyz local) {
    return x.times(local.x()).plus(y.times(local.y())).plus(z.times(local.z()));
  }

  /** The frame that {@code inner}, given in this frame, is in the frame of this one. */
  public Frame then(Frame inner) {
    return new Frame(
        point(inner.origin), direction(inner.x), direction(inner.y), direction(inner.z));
  }

  public Frame inverse() {
    Xyz back = new Xyz(-x.dot(origin), -y.dot(origin), -z.dot(origin));
    return new Frame(
        back,
        new Xyz(x.x(), y.x(), z.x()),
        new Xyz(x.y(), y.y(), z.y()),
        new Xyz(x.z(), y.z(), z.z()));
  }
}
