package org.underlee.samples;

/** A point or direction; millimetres where it is a point. */
public record Xyz(double x, double y, double z) {
  public static final Xyz ORIGIN = new Xyz(0, 0, 0);
  public static final Xyz X = new Xyz(1, 0, 0);
  public static final Xyz Y = new Xyz(0, 1, 0);
  public static final Xyz Z = new Xyz(0, 0, 1);

  public Xyz plus(Xyz o) {
    return new Xyz(x + o.x, y + o.y, z + o.z);
  }

  public Xyz minus(Xyz o) {
    return new Xyz(x - o.x, y - o.y, z - o.z);
  }

  public Xyz times(double f) {
    return new Xyz(x * f, y * f, z * f);
  }

  public double dot(Xyz o) {
    return x * o.x + y * o.y + z * o.z;
  }

  public Xyz cross(Xyz o) {
    return new Xyz(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
  }

  public Xyz unit() {
    return times(1 / Math.sqrt(dot(this)));
  }
}
