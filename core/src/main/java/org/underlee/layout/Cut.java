package org.underlee.layout;

import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** A cut in a part, dimensioned from the part itself, in metres. */
public sealed interface Cut {

  /**
   * A notch in a side rail's leg, open at the leg's top.
   *
   * @param from its start, from the rail's high end
   * @param length along the rail
   * @param depth from the leg's top edge
   */
  record Notch(double from, double length, double depth) implements Cut {
    @Override
    public Words words() {
      return Words.of(
          "notch %s long, %s deep from the leg's top, from %s to %s off the high end",
          Quantity.length(length),
          Quantity.length(depth),
          Quantity.length(from),
          Quantity.length(from + length));
    }
  }

  /**
   * A hole in the floor of a collar piece.
   *
   * @param along its middle, from the piece's head
   * @param across its middle, from the edge on the first joist's side, as seen when looking down
   *     the fall: from the left
   * @param length along the piece; equal to {@code width} when it is round
   */
  record Hole(double along, double across, double length, double width, boolean round)
      implements Cut {
    @Override
    public Words words() {
      return round
          ? Words.of(
              "hole %s across, its middle %s from the head and %s from the first joist's side",
              Quantity.length(width), Quantity.length(along), Quantity.length(across))
          : Words.of(
              "hole %s along by %s across, its middle %s from the head and %s from the first"
                  + " joist's side",
              Quantity.length(length),
              Quantity.length(width),
              Quantity.length(along),
              Quantity.length(across));
    }
  }

  /**
   * A slit from a hole to the end of a collar piece on the downhill side, by which it is slipped
   * around the pipe; closed and sealed after fitting.
   *
   * @param from its start at the hole, from the piece's head; {@code to} its end
   */
  record Slit(double from, double to, double across) implements Cut {
    @Override
    public Words words() {
      return Words.of(
          "slit downhill of the hole, from %s to %s off the head",
          Quantity.length(from), Quantity.length(to));
    }
  }

  /** For people. */
  Words words();
}
