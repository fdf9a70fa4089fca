package org.underlee.drainage.flow;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The smallest gutter, fall and downspouts of what a kit offers that carry the water. It tries all
 * of them: smaller gutter first (by area, then depth with its drop), then fewer outlets, then
 * smaller downspouts, and takes the first that every accepted method passes.
 */
public final class Sizing {
  /**
   * What a kit offers.
   *
   * @param falls drop over run
   * @param overflow whether the kit has an overflow, which lets one outlet be enough
   */
  public record Offer(
      List<GutterSection> gutters, List<Double> falls, List<Opening> downspouts, boolean overflow) {
    public Offer {
      gutters = List.copyOf(gutters);
      falls = List.copyOf(falls);
      downspouts = List.copyOf(downspouts);
    }
  }

  /**
   * What is asked.
   *
   * @param room height that is left for the gutter and its drop, metres
   */
  public record Need(double length, List<Inflow> inflows, double roughness, double room) {
    public Need {
      inflows = List.copyOf(inflows);
    }
  }

  /** One set of the offer. */
  public record Choice(GutterSection gutter, double fall, int outlets, Opening downspout) {
    /** The height that it takes: a gutter with two outlets falls from its middle to both ends. */
    public double height(double length) {
      return gutter.depth() + fall * length / outlets;
    }

    double spouts() {
      return outlets * downspout.area();
    }
  }

  /**
   * A set and what became of it.
   *
   * @param result of its worse half where two outlets share the length
   * @param roomUse its height over the room: above 1 it does not fit
   * @param lacks what is missing, in words; empty when it passes
   */
  public record Answer(Choice choice, FlowResult result, double roomUse, List<String> lacks) {
    public Answer {
      lacks = List.copyOf(lacks);
    }

    public boolean passes() {
      return lacks.isEmpty();
    }

    /** The worst share of its limit: above 1 it fails. */
    double worst() {
      return Math.max(result.governing().use(), roomUse);
    }
  }

  private final Rater rater;

  public Sizing(Rater rater) {
    this.rater = rater;
  }

  /**
   * The first that passes; when none does, the one that is nearest, with what it lacks.
   *
   * @throws IllegalArgumentException when the offer is empty
   */
  public Answer choose(Offer offer, Need need) {
    List<Choice> choices = inOrder(offer, need.length());
    Optional<Choice> first = choices.stream().filter(c -> passes(c, need)).findFirst();
    if (first.isPresent()) {
      return attempt(first.get(), need);
    }
    Optional<Answer> nearest = Optional.empty();
    for (Choice choice : choices) {
      Answer answer = attempt(choice, need);
      if (nearest.isEmpty() || answer.worst() < nearest.get().worst()) {
        nearest = Optional.of(answer);
      }
    }
    return nearest.orElseThrow(
        () ->
            new IllegalArgumentException(
                "the offer has no gutter, fall or downspout to choose from: " + offer));
  }

  static List<Choice> inOrder(Offer offer, double length) {
    List<Choice> all = new ArrayList<>();
    for (GutterSection gutter : offer.gutters()) {
      for (double fall : offer.falls()) {
        for (Opening downspout : offer.downspouts()) {
          if (offer.overflow()) {
            all.add(new Choice(gutter, fall, 1, downspout));
          }
          all.add(new Choice(gutter, fall, 2, downspout));
        }
      }
    }
    all.sort(
        Comparator.comparingDouble((Choice c) -> c.gutter().fullArea())
            .thenComparingDouble(c -> c.height(length))
            .thenComparingInt(Choice::outlets)
            .thenComparingDouble(Choice::spouts));
    return all;
  }

  /** Whether one set passes, without how near it comes, which takes eight times as long. */
  private boolean passes(Choice choice, Need need) {
    return choice.height(need.length()) <= need.room()
        && runs(choice, need).stream()
            .allMatch(r -> rater.carries(r, Downspout.called(choice.downspout())));
  }

  /** One set, worked out. */
  Answer attempt(Choice choice, Need need) {
    FlowResult result = null;
    for (GutterRun run : runs(choice, need)) {
      FlowResult half = rater.rate(run, Downspout.called(choice.downspout()));
      if (result == null || half.governing().use() > result.governing().use()) {
        result = half;
      }
    }
    if (result == null) {
      throw new IllegalArgumentException("no water comes in: " + need);
    }
    double height = choice.height(need.length());
    double over = height - need.room();
    List<String> lacks = new ArrayList<>();
    if (over > 0) {
      lacks.add("it is " + Math.round(over * 1000) + " mm too high for the room");
    }
    Rating governing = result.governing();
    if (!governing.passes()) {
      lacks.add(
          governing.capacity().words()
              + " carries "
              + Math.round(100 / governing.use())
              + " % of the water");
    }
    return new Answer(choice, result, height / need.room(), lacks);
  }

  /** One outlet at the far end, or two halves that fall from the middle to the ends. */
  private static List<GutterRun> runs(Choice choice, Need need) {
    if (choice.outlets() == 1) {
      return List.of(run(choice, need, 0, need.length()));
    }
    double middle = need.length() / 2;
    return List.of(run(choice, need, middle, 0), run(choice, need, middle, need.length())).stream()
        .filter(r -> r.inflow() > 0)
        .toList();
  }

  private static GutterRun run(Choice choice, Need need, double high, double low) {
    double length = Math.abs(high - low);
    List<Inflow> own = new ArrayList<>();
    for (Inflow in : need.inflows()) {
      double from = Math.max(in.from(), Math.min(high, low));
      double to = Math.min(in.to(), Math.max(high, low));
      if (to > from) {
        double flow = in.flow() * (to - from) / (in.to() - in.from());
        double near = low > high ? from - high : high - to;
        own.add(new Inflow(near, near + (to - from), flow));
      }
    }
    Outlet outlet = Outlet.hole(length, choice.downspout());
    return new GutterRun(
        length, choice.gutter(), choice.fall(), need.roughness(), own, List.of(outlet));
  }
}
