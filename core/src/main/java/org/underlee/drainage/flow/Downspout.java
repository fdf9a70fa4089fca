package org.underlee.drainage.flow;

/**
 * A downspout as it is rated. Formulas take what is clear in it. Tables of codes are by the size
 * that a pipe is called by, and the wall of a sheet pipe takes a little of that.
 *
 * @param clear shape of its inside
 * @param size that tables are read at, metres; of a rectangular one that of the circle of equal
 *     area
 * @param sizedBy where that comes from
 */
public record Downspout(Opening clear, double size, SizedBy sizedBy) {
  /** What the size for tables comes from. */
  public enum SizedBy {
    /** Somebody states by what size it is called. */
    NOMINAL,
    /** Nobody does: what is clear, and an allowance for the wall at each side. */
    CLEAR
  }

  /** One that is called by a size. */
  public static Downspout nominal(Opening clear, double size) {
    return new Downspout(clear, size, SizedBy.NOMINAL);
  }

  /** One of a clear shape that is called by just this, as in a list of sizes. */
  public static Downspout called(Opening clear) {
    return nominal(clear, clear.equalDiameter());
  }

  /**
   * One that nobody says the size of.
   *
   * @param wall thickness that is allowed for at each side, metres
   */
  public static Downspout clear(Opening clear, double wall) {
    return new Downspout(clear, clear.equalDiameter() + 2 * wall, SizedBy.CLEAR);
  }
}
