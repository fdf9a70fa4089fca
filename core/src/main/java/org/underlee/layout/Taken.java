package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.DoublePredicate;
import org.underlee.geom.Interval;

/**
 * Stretches of a line that are taken, ends excluded. Those that share more than an end are kept as
 * one, so that every end is free, and looking for a place looks at its neighbours only.
 */
final class Taken {
  /** From where each begins to where it ends. */
  private final TreeMap<Double, Double> stretches = new TreeMap<>();

  void add(Interval stretch) {
    double from = stretch.from();
    double to = stretch.to();
    Map.Entry<Double, Double> met = stretches.lowerEntry(to);
    while (met != null && met.getValue() > from) {
      from = Math.min(from, met.getKey());
      to = Math.max(to, met.getValue());
      stretches.remove(met.getKey());
      met = stretches.lowerEntry(to);
    }
    stretches.put(from, to);
  }

  /**
   * The free place that is nearest to one, of two as near the lower; the place itself where no
   * allowed one is free.
   *
   * @param allowed whether a place may be taken at all: of all places those between two
   */
  double nearestFree(double place, DoublePredicate allowed) {
    List<Double> choices = new ArrayList<>();
    Map.Entry<Double, Double> around = stretches.lowerEntry(place);
    if (around == null || around.getValue() <= place) {
      choices.add(place);
    }
    for (var e = around; e != null; e = stretches.lowerEntry(e.getKey())) {
      if (add(choices, allowed, e.getValue(), e.getKey()) && e.getValue() <= place) {
        break;
      }
    }
    for (var e = stretches.ceilingEntry(place); e != null; e = next(e)) {
      if (add(choices, allowed, e.getKey(), e.getValue())) {
        break;
      }
    }
    return nearest(choices, place, allowed);
  }

  private Map.Entry<Double, Double> next(Map.Entry<Double, Double> e) {
    return stretches.higherEntry(e.getKey());
  }

  /** Whether one of the ends of a stretch is allowed: those further off are no nearer. */
  private static boolean add(
      List<Double> choices, DoublePredicate allowed, double near, double far) {
    choices.add(near);
    choices.add(far);
    return allowed.test(near);
  }

  private static double nearest(List<Double> choices, double place, DoublePredicate allowed) {
    double best = place;
    double least = Double.POSITIVE_INFINITY;
    for (double c : choices) {
      double off = Math.abs(c - place);
      if (allowed.test(c) && (off < least || (off == least && c < best))) {
        best = c;
        least = off;
      }
    }
    return best;
  }
}
