package org.underlee.layout;

import static org.underlee.kit.DrainValue.GUTTER_LONGEST;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.underlee.framing.JoistLine;
import org.underlee.geom.Interval;
import org.underlee.kit.Items;

/**
 * Divides a gutter line that is longer than one outlet serves. Two stretches meet at their high
 * ends, each with its end cap, below the middle of a single joist, where neither a pan nor a strip
 * drips between them.
 */
final class GutterStretches {
  /** Left between two end caps. */
  static final double BETWEEN = 0.001;

  private static final double SAME = 1e-9;

  private GutterStretches() {}

  /**
   * @param least how many stretches are asked for; more where they would be too long
   */
  static List<Interval> of(FieldPlan plan, double face, Interval across, int least) {
    double longest = longest(plan);
    List<Double> joists = joists(plan, face, across);
    int parts = Math.max(least, (int) Math.ceil(across.length() / longest - SAME));
    List<Double> cuts = cuts(across, parts, joists);
    while (longest(cuts) > longest + SAME && parts <= joists.size()) {
      cuts = cuts(across, ++parts, joists);
    }
    double end = plan.kit().item(Items.END_CAP).thickness() + BETWEEN / 2;
    List<Interval> stretches = new ArrayList<>();
    for (int i = 0; i + 1 < cuts.size(); i++) {
      stretches.add(
          new Interval(
              cuts.get(i) + (i == 0 ? 0 : end),
              cuts.get(i + 1) - (i + 2 == cuts.size() ? 0 : end)));
    }
    return stretches;
  }

  /** How much of a gutter may fall to one outlet. */
  static double longest(FieldPlan plan) {
    return plan.kit().get(GUTTER_LONGEST);
  }

  /** Between the troughs of two stretches: two end caps, and a little. */
  static double betweenEnds(FieldPlan plan) {
    return 2 * plan.kit().item(Items.END_CAP).thickness() + BETWEEN;
  }

  /** Middles of single joists, under which a gutter can be divided. */
  static List<Double> joists(FieldPlan plan, double face, Interval across) {
    return plan.bays().field().lines().stream()
        .filter(l -> l.pliesAbreast() == 1)
        .map(l -> middle(l, face))
        .filter(u -> u > across.from() && u < across.to())
        .toList();
  }

  private static double middle(JoistLine line, double v) {
    return (line.left().at(v) + line.right().at(v)) / 2;
  }

  /** Both ends, and between them the joists nearest to equal parts. */
  private static List<Double> cuts(Interval across, int parts, List<Double> joists) {
    List<Double> cuts = new ArrayList<>(List.of(across.from(), across.to()));
    for (int i = 1; i < parts; i++) {
      double equal = across.from() + across.length() * i / parts;
      cuts.add(
          joists.stream().min(Comparator.comparingDouble(u -> Math.abs(u - equal))).orElse(equal));
    }
    return cuts.stream().sorted().distinct().toList();
  }

  private static double longest(List<Double> cuts) {
    double longest = 0;
    for (int i = 0; i + 1 < cuts.size(); i++) {
      longest = Math.max(longest, cuts.get(i + 1) - cuts.get(i));
    }
    return longest;
  }
}
