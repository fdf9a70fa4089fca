package org.underlee.layout;

import java.util.ArrayList;
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

  /** The rain on the bays, and what gutters of the plan's kit carry of it. */
  record Rain(FieldPlan plan, List<Share> shares, GutterCapacity capacity) {
    boolean isCarriedBy(List<GutterLine.Outlet> outlets) {
      return outlets.stream()
          .allMatch(o -> capacity.carries(plan.kit(), o.stretch(), o.u(), within(o.stretch())));
    }

    /**
     * The hardest used of some. One that carries the rain which the hardest so far just carries is
     * not harder, and to know that takes one solution instead of eight.
     */
    Use hardest(List<GutterLine.Outlet> outlets) {
      Use hardest = new Use(0, "");
      for (GutterLine.Outlet o : outlets) {
        List<Share> own = within(o.stretch());
        if (!(hardest.share() > 0)
            || !capacity.carries(plan.kit(), o.stretch(), o.u(), own, 1 / hardest.share())) {
          Use use = capacity.of(plan.kit(), o.stretch(), o.u(), own);
          hardest = use.share() > hardest.share() ? use : hardest;
        }
      }
      return hardest;
    }

    private List<Share> within(Interval stretch) {
      List<Share> own = new ArrayList<>();
      for (Share share : shares) {
        Interval met = share.across().meet(stretch);
        if (!met.isEmpty() && met.length() > 0) {
          own.add(new Share(met, share.area() * met.length() / share.across().length()));
        }
      }
      return own;
    }
  }

  static Rain rain(FieldPlan plan, double face, GutterCapacity capacity) {
    return new Rain(plan, shares(plan, face, capacity), capacity);
  }

  static OutletCount of(FieldPlan plan, double face, Interval across, GutterCapacity capacity) {
    Rain rain = rain(plan, face, capacity);
    List<List<GutterLine.Outlet>> tried = new ArrayList<>();
    int parts = 1;
    while (tried.isEmpty() || across.length() / parts >= NEAREST) {
      List<GutterLine.Outlet> outlets =
          GutterStretches.of(plan, face, across, parts).stream()
              .map(s -> GutterLine.outlet(plan, face, s))
              .toList();
      if (rain.isCarriedBy(outlets)) {
        return new OutletCount(outlets, whyMany(tried, outlets, rain));
      }
      tried.add(outlets);
      parts = outlets.size() + 1;
    }
    return leastLacking(tried, rain);
  }

  /** Empty where one stretch is enough, or where the gutter's length alone decides. */
  private static String whyMany(
      List<List<GutterLine.Outlet>> fewer, List<GutterLine.Outlet> outlets, Rain rain) {
    if (fewer.isEmpty()) {
      return "";
    }
    List<GutterLine.Outlet> before = fewer.get(fewer.size() - 1);
    Use use = rain.hardest(before);
    return String.format(
        Locale.ROOT,
        "; one of %d, as %d would carry %d %% of the rain, by %s",
        outlets.size(),
        before.size(),
        percent(use),
        use.by());
  }

  private static OutletCount leastLacking(List<List<GutterLine.Outlet>> tried, Rain rain) {
    List<Use> uses = tried.stream().map(rain::hardest).toList();
    int best = 0;
    for (int i = 1; i < uses.size(); i++) {
      best = uses.get(i).share() < uses.get(best).share() ? i : best;
    }
    String why =
        String.format(
            Locale.ROOT,
            "; one of %d, and no number of outlets carries the rain: %d %% of it, by %s",
            tried.get(best).size(),
            percent(uses.get(best)),
            uses.get(best).by());
    return new OutletCount(tried.get(best), why);
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

  private static long percent(Use use) {
    return (long) Math.floor(100 / use.share());
  }
}
