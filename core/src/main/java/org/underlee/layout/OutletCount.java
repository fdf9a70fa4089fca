package org.underlee.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.underlee.geom.Interval;
import org.underlee.layout.GutterCapacity.Share;
import org.underlee.layout.GutterCapacity.Use;

/**
 * How many outlets a gutter gets: the fewest that carry the rain, and no stretch longer than the
 * kit allows. When no number carries it, the one that lacks least; a check tells of it.
 *
 * @param outlets from low u to high u
 * @param why in words
 */
record OutletCount(List<GutterLine.Outlet> outlets, String why) {
  /** Outlets nearer to each other than this are not tried. */
  private static final double NEAREST = 1.2;

  /** A number of outlets, and the use of the hardest used one. */
  private record Choice(List<GutterLine.Outlet> outlets, Use use) {}

  static OutletCount of(FieldPlan plan, double face, Interval across, GutterCapacity capacity) {
    List<Share> shares = shares(plan, face, capacity);
    List<Choice> tried = new ArrayList<>();
    int parts = 1;
    while (tried.isEmpty() || (!carries(last(tried)) && across.length() / parts >= NEAREST)) {
      List<GutterLine.Outlet> outlets =
          GutterStretches.of(plan, face, across, parts).stream()
              .map(s -> GutterLine.outlet(plan, face, s))
              .toList();
      parts = outlets.size() + 1;
      tried.add(new Choice(outlets, hardest(plan, outlets, shares, capacity)));
    }
    Choice best =
        tried.stream()
            .min(Comparator.comparingDouble(c -> Math.max(1, c.use.share())))
            .orElseThrow();
    return new OutletCount(best.outlets, why(tried, best));
  }

  private static Choice last(List<Choice> tried) {
    return tried.get(tried.size() - 1);
  }

  private static boolean carries(Choice choice) {
    return choice.use.share() <= 1;
  }

  private static Use hardest(
      FieldPlan plan,
      List<GutterLine.Outlet> outlets,
      List<Share> shares,
      GutterCapacity capacity) {
    return outlets.stream()
        .map(o -> capacity.of(plan.kit(), o.stretch(), o.u(), within(shares, o.stretch())))
        .max(Comparator.comparingDouble(Use::share))
        .orElseThrow();
  }

  private static List<Share> shares(FieldPlan plan, double face, GutterCapacity capacity) {
    return plan.served().stream()
        .map(
            r -> {
              double v = r.bay().stretch().middle();
              double width = r.bay().right().centre(v) - r.bay().left().centre(v);
              Interval across =
                  new Interval(r.bay().left().centre(face), r.bay().right().centre(face));
              double above = capacity.fromAbove(plan.bays().field(), across);
              return new Share(across, width * r.run() + above);
            })
        .toList();
  }

  private static List<Share> within(List<Share> shares, Interval stretch) {
    List<Share> own = new ArrayList<>();
    for (Share share : shares) {
      Interval met = share.across().meet(stretch);
      if (!met.isEmpty() && met.length() > 0) {
        own.add(new Share(met, share.area() * met.length() / share.across().length()));
      }
    }
    return own;
  }

  /** Empty where one stretch is enough, or where the gutter's length alone decides. */
  private static String why(List<Choice> tried, Choice best) {
    if (best.use.share() > 1) {
      return String.format(
          Locale.ROOT,
          "; one of %d, and no number of outlets carries the rain: %d %% of it, by %s",
          best.outlets.size(),
          percent(best),
          best.use.by());
    }
    int at = tried.indexOf(best);
    if (at == 0) {
      return "";
    }
    Choice fewer = tried.get(at - 1);
    return String.format(
        Locale.ROOT,
        "; one of %d, as %d would carry %d %% of the rain, by %s",
        best.outlets.size(),
        fewer.outlets.size(),
        percent(fewer),
        fewer.use.by());
  }

  private static long percent(Choice choice) {
    return (long) Math.floor(100 / choice.use.share());
  }
}
