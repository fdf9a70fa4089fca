package org.underlee.drainage.flow;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Works out a gutter by every method. The flow solution is rated by scaling the rain until the
 * deepest water leaves just the freeboard.
 */
public final class Rater {
  private static final double CLOSE = 1e-4;

  /** A wider rectangle than this shape does not stand in for a half-round gutter of equal area. */
  private static final double LEAST_SHAPE = 0.75;

  private final CapacityData data;
  private final double freeboard;

  /**
   * A rater by these data.
   *
   * @param freeboard metres to keep between the water and the rim
   */
  public Rater(CapacityData data, double freeboard) {
    this.data = data;
    this.freeboard = freeboard;
  }

  /**
   * Rates a gutter whose outlets each lead to such a downspout.
   *
   * @throws IllegalArgumentException when nothing flows in, so that there is nothing to rate
   */
  public FlowResult rate(GutterRun run, Downspout downspout) {
    if (!(run.inflow() > 0)) {
      throw new IllegalArgumentException(
          "a gutter with an inflow of " + run.inflow() + " m3/s has nothing to rate");
    }
    FlowProfile profile = GutterFlow.solve(run);
    double depth = profile.deepest().depth();
    return new FlowResult(
        profile,
        run.section().depth() - depth,
        ratings(run, profile, downspout, largest(run, depth)));
  }

  /**
   * Whether all accepted methods pass a gutter with something flowing in, as {@link #rate} says,
   * which also works out how much more it could carry.
   */
  public boolean carries(GutterRun run, Downspout downspout) {
    if (run.outlets().size() == 1) {
      return carriesToOne(run, downspout);
    }
    FlowProfile profile = GutterFlow.solve(run);
    double times = profile.deepest().depth() <= most(run) ? 1 : 0;
    return ratings(run, profile, downspout, times).stream()
        .filter(r -> r.capacity().accepted())
        .allMatch(Rating::passes);
  }

  /**
   * Of the accepted methods, the one that leaves the least of a gutter with something flowing in:
   * as {@link #rate} says. Where a formula leaves less than the flow solution, one solution shows
   * it, instead of the many that say how much more the gutter could carry.
   */
  public Optional<Rating> hardest(GutterRun run, Downspout downspout) {
    if (run.outlets().size() == 1) {
      Optional<Rating> formula =
          hardest(ratings(run, knownFlows(run), downspout, Double.POSITIVE_INFINITY));
      double use = formula.map(Rating::use).orElse(0.0);
      if (use > 0 && Double.isFinite(use) && isDeepEnough(run.scaled(1 / use))) {
        return formula;
      }
    }
    return hardest(rate(run, downspout).ratings());
  }

  private static Optional<Rating> hardest(List<Rating> ratings) {
    return ratings.stream()
        .filter(r -> r.capacity().accepted())
        .max(Comparator.comparingDouble(Rating::use));
  }

  /** With one outlet all flows are known beforehand: what needs no solution is asked first. */
  private boolean carriesToOne(GutterRun run, Downspout downspout) {
    return ratings(run, knownFlows(run), downspout, Double.POSITIVE_INFINITY).stream()
            .filter(r -> r.capacity().accepted())
            .allMatch(Rating::passes)
        && isDeepEnough(run);
  }

  private boolean isDeepEnough(GutterRun run) {
    // the water is nowhere lower than what drives it through the outlet
    return run.outlets().get(0).head(run.inflow()) <= most(run)
        && GutterFlow.solve(run).deepest().depth() <= most(run);
  }

  /** What reaches the only outlet, from both sides, without the depths. */
  private static FlowProfile knownFlows(GutterRun run) {
    Outlet outlet = run.outlets().get(0);
    double before = new InflowLine(run.length(), run.inflows()).upTo(outlet.at());
    double after = run.inflow() - before;
    return new FlowProfile(
        List.of(new FlowProfile.Station(outlet.at(), 0, Math.max(before, after))),
        List.of(new FlowProfile.Outflow(outlet, before, after, 0)));
  }

  private List<Rating> ratings(
      GutterRun run, FlowProfile profile, Downspout downspout, double times) {
    List<Rating> ratings = new ArrayList<>();
    double carried = profile.greatestFlow();
    gutter(run, times * carried)
        .forEach(c -> ratings.add(new Rating(Rating.Part.GUTTER, c, carried)));
    double taken = profile.greatestOutflow();
    outlets(run, profile).forEach(ratings::add);
    downspout(downspout).forEach(c -> ratings.add(new Rating(Rating.Part.DOWNSPOUT, c, taken)));
    return ratings;
  }

  /**
   * @param solved what it carries by the flow solution
   */
  private List<Capacity> gutter(GutterRun run, double solved) {
    GutterSection section = run.section();
    double fall = Math.abs(run.fall());
    List<Capacity> all = new ArrayList<>();
    all.add(data.method("flow-solution").of(solved));
    Formulas.enDesign(section, fall, run.length())
        .ifPresent(q -> all.add(data.method("en-12056-3-gutter").of(q)));
    all.add(data.method("beij-1934").of(Formulas.beij(section, run.length())));
    if (fall > 0 && run.roughness() > 0) {
      double manning = Formulas.manning(section, fall, run.roughness());
      all.add(data.method("manning-bank-full").of(manning));
    }
    semicircle(section).ifPresent(d -> all.addAll(data.tabled(CapacityData.SEMICIRCULAR, d, fall)));
    return all;
  }

  /** The half-round gutter whose entry of a table may be read for this one. */
  private static Optional<Double> semicircle(GutterSection section) {
    if (section instanceof HalfRound half) {
      return Optional.of(half.diameter());
    }
    return section.depth() / section.rimWidth() < LEAST_SHAPE
        ? Optional.empty()
        : Optional.of(Math.sqrt(8 * section.fullArea() / Math.PI));
  }

  private double most(GutterRun run) {
    return run.section().depth() - freeboard;
  }

  /**
   * How many times this rain the gutter holds with its freeboard: false position (Illinois), from
   * below, on the depth to the power of 3/2, which grows almost as the rain does.
   *
   * @param depth of the deepest water in this rain
   */
  private double largest(GutterRun run, double depth) {
    if (most(run) <= 0) {
      return 0;
    }
    double most = grown(most(run));
    double low = 0;
    double atLow = -most;
    double high = 1;
    double atHigh = grown(depth) - most;
    while (atHigh <= 0) {
      low = high;
      atLow = atHigh;
      high *= 2;
      atHigh = deepest(run, high) - most;
    }
    int side = 0;
    while (high - low > CLOSE * high && high >= CLOSE && atLow < -CLOSE * most) {
      double times = (low * atHigh - high * atLow) / (atHigh - atLow);
      double over = deepest(run, times) - most;
      if (over > 0) {
        high = times;
        atHigh = over;
        atLow = side > 0 ? atLow / 2 : atLow;
        side = 1;
      } else {
        low = times;
        atLow = over;
        atHigh = side < 0 ? atHigh / 2 : atHigh;
        side = -1;
      }
    }
    return high < CLOSE ? 0 : low;
  }

  private static double grown(double depth) {
    return depth * Math.sqrt(depth);
  }

  private static double deepest(GutterRun run, double times) {
    return grown(GutterFlow.solve(run.scaled(times)).deepest().depth());
  }

  private List<Rating> outlets(GutterRun run, FlowProfile profile) {
    double head = Math.max(0, most(run));
    return profile.outflows().stream()
        .filter(o -> o.outlet().opening().isPresent())
        .max(Comparator.comparingDouble(o -> o.total() / o.outlet().share()))
        .map(o -> outlet(o, o.outlet().opening().orElseThrow(), head))
        .orElse(List.of());
  }

  private List<Rating> outlet(FlowProfile.Outflow out, Opening opening, double head) {
    double share = out.outlet().share();
    Map<String, Double> flows =
        Map.of(
            "hec-22-outlet", Outlets.flow(opening, head),
            "en-12056-3-outlet", Outlets.enFlow(opening, head));
    return flows.keySet().stream()
        .sorted()
        .map(id -> data.method(id).of(share * flows.getOrDefault(id, 0.0)))
        .map(c -> new Rating(Rating.Part.OUTLET, c, out.total()))
        .toList();
  }

  /**
   * What every method says of a downspout; formulas take a rectangle as the pipe that rubs alike.
   */
  public List<Capacity> downspout(Downspout downspout) {
    Opening clear = downspout.clear();
    double diameter = clear.hydraulicDiameter();
    List<Capacity> all = new ArrayList<>();
    all.add(data.method("wyly-eaton").of(Formulas.wylyEaton(diameter, Formulas.DOWNSPOUT_FILLING)));
    all.add(
        data.method("en-12056-3-downpipe").of(Formulas.enDownpipe(diameter, Formulas.EN_FILLING)));
    all.add(data.method("area-rule").of(Formulas.areaRule(clear.area())));
    boolean round = clear instanceof Opening.Round;
    all.addAll(
        data.tabled(
            round ? CapacityData.ROUND_DOWNSPOUT : CapacityData.RECTANGULAR_DOWNSPOUT,
            downspout.size(),
            0));
    return all;
  }
}
