package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Interval;

/**
 * Splits a trough into pieces that can be formed.
 *
 * @param longest piece that can be formed, its lap included
 * @param lap how far a piece lies over the next one downhill
 */
record Laps(double longest, double lap) {
  private static final double SAME = 1e-9;

  /**
   * Equal stretches without their laps, none too long to form with its lap.
   *
   * @param goesOn whether another piece follows, so that the last one laps too
   */
  List<Interval> split(Interval stretch, boolean goesOn) {
    List<Interval> pieces = new ArrayList<>();
    if (stretch.isEmpty()) {
      return pieces;
    }
    boolean fitsWhole = !goesOn && stretch.length() <= longest + SAME;
    int count = fitsWhole ? 1 : (int) Math.ceil(stretch.length() / (longest - lap) - SAME);
    double each = stretch.length() / count;
    for (int i = 0; i < count; i++) {
      pieces.add(new Interval(stretch.from() + i * each, stretch.from() + (i + 1) * each));
    }
    return pieces;
  }
}
