package org.underlee.check;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.underlee.drainage.flow.Rating;
import org.underlee.drainage.flow.Sizing;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.layout.PartKind;

/**
 * What carries the rain of a layout away, and the least that would.
 *
 * @param own of the kit, with as many outlets as all fields have together
 * @param use the part of its capacity that the hardest used stretch takes: above 1 it runs over
 * @param by what governs there, with its mark
 * @param stretch its length along the gutter, metres
 * @param least the smallest of the trade's common sets that carries that stretch with its freeboard
 *     in the headroom that is left; empty when none does
 */
public record DrainSet(Size own, double use, String by, double stretch, Optional<Size> least) {
  /**
   * A gutter with downspouts, metres.
   *
   * @param outlets each with a downspout
   */
  public record Size(double width, double depth, double downspout, int outlets) {
    private static Size of(Sizing.Choice choice) {
      return new Size(
          choice.gutter().rimWidth(),
          choice.gutter().depth(),
          choice.downspout().equalDiameter(),
          choice.outlets());
    }

    private static Size of(Kit kit, int outlets) {
      return new Size(
          kit.get(DrainValue.GUTTER_WIDTH),
          kit.get(DrainValue.GUTTER_DEPTH),
          kit.get(DrainValue.DOWNSPOUT_DIAMETER),
          outlets);
    }
  }

  /** A stretch, and what governs it. */
  private record Used(Stretch stretch, Rating by) {}

  /** Of a layout; empty when no gutter of it takes water. */
  public static Optional<DrainSet> of(CheckInput input) {
    GutterInRain rain = input.gutters();
    return input.fields().stream()
        .flatMap(f -> Stretch.of(f, input, rain).stream())
        .flatMap(s -> governing(s, rain).map(r -> new Used(s, r)).stream())
        .max(Comparator.comparingDouble(u -> u.by.use()))
        .map(u -> of(u, input.fields(), rain));
  }

  private static Optional<Rating> governing(Stretch stretch, GutterInRain rain) {
    return stretch.accepted(rain).stream().max(Comparator.comparingDouble(Rating::use));
  }

  private static DrainSet of(Used hardest, List<Assembled> fields, GutterInRain rain) {
    long outlets = fields.stream().mapToLong(f -> f.all(PartKind.OUTLET).count()).sum();
    return new DrainSet(
        Size.of(hardest.stretch.field().kit(), (int) outlets),
        hardest.by.use(),
        hardest.by.capacity().words(),
        hardest.stretch.along().length(),
        new LargerGutter(rain).smallest(hardest.stretch).map(Size::of));
  }
}
