package org.underlee.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.underlee.finding.InputException;
import org.underlee.geom.Interval;
import org.underlee.layout.GutterLine.Outlet;

/**
 * Outlets where the user wants them. Between two of them the gutter is divided under the single
 * joist nearest to their middle. What cannot be, or does not carry the rain, is refused with its
 * numbers.
 */
record OutletsAsked(FieldPlan plan, double face, Interval across, GutterCapacity capacity) {
  /** An outlet this near to the place beside a post is meant to be fixed to it. */
  private static final double AT_POST = 0.01;

  /** Two outlets are no nearer to each other. */
  private static final double APART = 2 * GutterLine.FROM_END;

  /**
   * The outlets with their stretches.
   *
   * @param asked metres along the gutter, ascending
   * @throws InputException when that cannot be, or does not carry the rain
   */
  OutletCount at(List<Double> asked) {
    asked.forEach(this::requireOnGutter);
    List<Outlet> outlets = new ArrayList<>();
    List<Outlet> beside = GutterLine.besidePosts(plan, face, across);
    double from = across.from();
    for (int i = 0; i < asked.size(); i++) {
      boolean last = i + 1 == asked.size();
      double cut = last ? across.to() : cut(asked.get(i), asked.get(i + 1));
      double gap = GutterStretches.betweenEnds(plan) / 2;
      Interval stretch = new Interval(from + (i == 0 ? 0 : gap), cut - (last ? 0 : gap));
      outlets.add(outlet(across.from() + asked.get(i), stretch, beside));
      from = cut;
    }
    outlets.forEach(this::requireNotTooLong);
    OutletCount count = new OutletCount(outlets, "; where you asked for it with --outlets");
    requireCarried(count, asked);
    return count;
  }

  private static Outlet outlet(double u, Interval stretch, List<Outlet> beside) {
    Optional<Outlet> post =
        beside.stream()
            .filter(o -> Math.abs(o.u() - u) <= AT_POST)
            .min(Comparator.comparingDouble(o -> Math.abs(o.u() - u)));
    return new Outlet(post.map(Outlet::u).orElse(u), stretch, post.flatMap(Outlet::post));
  }

  private void requireOnGutter(double metres) {
    double last = across.length() - GutterLine.FROM_END;
    if (metres < GutterLine.FROM_END - AT_POST || metres > last + AT_POST) {
      throw refused(
          "the outlet at %.3f m is not on the gutter, where outlets are from %.3f m to %.3f m",
          metres, GutterLine.FROM_END, last);
    }
  }

  private double cut(double a, double b) {
    double middle = across.from() + (a + b) / 2;
    Interval between = new Interval(across.from() + a, across.from() + b);
    return GutterStretches.joists(plan, face, across).stream()
        .filter(u -> u - between.from() >= APART / 2 && between.to() - u >= APART / 2)
        .min(Comparator.comparingDouble(u -> Math.abs(u - middle)))
        .orElseThrow(
            () ->
                refused(
                    "no single joist is between the outlets at %.3f m and %.3f m to divide the"
                        + " gutter under, %.3f m from each",
                    a, b, APART / 2));
  }

  private void requireNotTooLong(Outlet o) {
    double longest = GutterStretches.longest(plan);
    if (o.stretch().length() > longest + AT_POST) {
      throw refused(
          "%.3f m of gutter would fall to the outlet at %.3f m, and kit "
              + plan.kit().id()
              + " allows %.3f m",
          o.stretch().length(),
          o.u() - across.from(),
          longest);
    }
  }

  /** More than the program's own choice would lack is refused; a check tells of what all lack. */
  private void requireCarried(OutletCount count, List<Double> asked) {
    OutletCount.Rain rain = OutletCount.rain(plan, face, capacity);
    if (rain.isCarriedBy(count.outlets())) {
      return;
    }
    OutletCount own = OutletCount.of(plan, face, across, capacity);
    GutterCapacity.Use use = rain.hardest(count.outlets());
    if (use.share() > Math.max(1, rain.hardest(own.outlets()).share())) {
      throw refused(
          "with outlets at "
              + OutletWishes.NONE.with(plan.bays().field().id(), asked).text()
              + " m the gutter carries %.0f %% of the rain, by "
              + use.by()
              + "; %.0f outlets, the first at %.3f m, would do better",
          Math.floor(100 / use.share()),
          (double) own.outlets().size(),
          own.outlets().get(0).u() - across.from());
    }
  }

  private InputException refused(String words, Object... numbers) {
    return new InputException(
        plan.bays().field().lines().get(0).plies().get(0).element().place(),
        plan.bays().field().id() + ": " + String.format(Locale.ROOT, words, numbers),
        "Move the outlet, add one, or leave the choice to the program.");
  }
}
