package org.underlee.run;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.underlee.check.DrainSet;
import org.underlee.kit.Kit;
import org.underlee.layout.FieldLayout;
import org.underlee.takeoff.Order;

/**
 * One way to keep the decks in scope dry, and what it gives and costs.
 *
 * @param lowEnd the line that low ends follow where a field has it: {@code beam-1}, {@code
 *     joist-end}
 * @param bothWays fields that fall both ways from a high line
 * @param fields as laid out
 * @param boardsOff whether it can be built only before the boards are laid
 * @param dryFraction of the rain between the outer joists that reaches an outlet
 * @param headroom the least below the gutters, metres, where there is a gutter
 * @param partsCut parts with a notch, a hole or a slit
 * @param bought lengths and pieces to buy
 * @param cost of what is ordered, spares included, where there is a price list
 * @param drains gutter and downspouts, and the least that would do; empty where no gutter takes
 *     water
 * @param dominatedBy number of another arrangement that is nowhere worse and somewhere better
 */
public record Arrangement(
    Kit kit,
    String lowEnd,
    List<String> bothWays,
    List<FieldLayout> fields,
    boolean boardsOff,
    double dryFraction,
    OptionalDouble headroom,
    int partsCut,
    int bought,
    Optional<Order.Cost> cost,
    Optional<DrainSet> drains,
    Optional<Integer> dominatedBy) {
  public Arrangement {
    bothWays = List.copyOf(bothWays);
    fields = List.copyOf(fields);
  }

  Arrangement dominatedBy(Optional<Integer> other) {
    return new Arrangement(
        kit,
        lowEnd,
        bothWays,
        fields,
        boardsOff,
        dryFraction,
        headroom,
        partsCut,
        bought,
        cost,
        drains,
        other);
  }

  /** Shares nearer than this, and heights nearer than a millimetre, are equal. */
  private static final double SAME_SHARE = 0.001;

  private static final double SAME_HEIGHT = 0.001;

  double headroomOrNone() {
    return headroom.orElse(0);
  }

  boolean dominates(Arrangement o) {
    boolean noWorse =
        dryFraction >= o.dryFraction - SAME_SHARE
            && headroomOrNone() >= o.headroomOrNone() - SAME_HEIGHT
            && partsCut <= o.partsCut
            && bought <= o.bought
            && fall() >= o.fall()
            && (!boardsOff || o.boardsOff);
    boolean better =
        dryFraction > o.dryFraction + SAME_SHARE
            || headroomOrNone() > o.headroomOrNone() + SAME_HEIGHT
            || partsCut < o.partsCut
            || bought < o.bought
            || fall() > o.fall()
            || (!boardsOff && o.boardsOff);
    return noWorse && better;
  }

  /** Drop over run of what catches the water. */
  public double fall() {
    return kit.fall();
  }

  /** Whether the parts are in the same places as those of another. */
  boolean isSameAs(Arrangement o) {
    return kit.id().equals(o.kit.id()) && fall() == o.fall() && fields.equals(o.fields);
  }
}
