package org.underlee.drainage.flow;

/** The clear shape of an outlet or of a downspout, in metres. */
public sealed interface Opening {
  double area();

  double perimeter();

  /** A round one. */
  record Round(double diameter) implements Opening {
    public Round {
      positive("diameter", diameter);
    }

    @Override
    public double area() {
      return Math.PI * diameter * diameter / 4;
    }

    @Override
    public double perimeter() {
      return Math.PI * diameter;
    }
  }

  /** A rectangular one. */
  record Rectangular(double width, double breadth) implements Opening {
    public Rectangular {
      positive("width", width);
      positive("breadth", breadth);
    }

    @Override
    public double area() {
      return width * breadth;
    }

    @Override
    public double perimeter() {
      return 2 * (width + breadth);
    }
  }

  /** Of a pipe that rubs as this does: four areas over the perimeter; a circle's own diameter. */
  default double hydraulicDiameter() {
    return 4 * area() / perimeter();
  }

  /** Of the circle of equal area. */
  default double equalDiameter() {
    return Math.sqrt(4 * area() / Math.PI);
  }

  private static void positive(String what, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          "an opening of " + what + " " + value + " m is none; expected more than zero");
    }
  }
}
