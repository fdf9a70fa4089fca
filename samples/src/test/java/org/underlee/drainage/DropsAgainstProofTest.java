package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.geom.Vec2;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDeck;
import org.underlee.samples.SampleDecks;

/** The exact partition and its graph against drops that walk over the meshes. */
class DropsAgainstProofTest {
  /** How many random decks: {@code -Dunderlee.seeds=200} before a release. */
  private static final int SEEDS = Integer.getInteger("underlee.seeds", 30);

  /** One false alarm in 16,000 comparisons: as rare as four standard errors. */
  private static final double RARE = 1 / 16_000.0;

  /** What both leave out: edges a sheet's thickness wide, counted in whole drops. */
  private static final double EDGES = 0.004;

  /** The same, over the drops of all decks together. */
  private static final double EDGES_OF_ALL = 0.001;

  private static int drops;
  private static int lostInAll;
  private static double expectedInAll;

  record Deck(SampleDeck sample, int drops) {
    @Override
    public String toString() {
      return sample.name();
    }
  }

  static Stream<Deck> decks() {
    return Stream.concat(
        SampleDecks.all().stream().map(d -> new Deck(d, 600)),
        LongStream.rangeClosed(1, SEEDS).mapToObj(s -> new Deck(SampleDecks.random(s), 40)));
  }

  @ParameterizedTest
  @MethodSource("decks")
  void dryFractionAndTheAmountAtEachOutletAgreeWithinTheSamplingError(Deck deck) {
    Design design =
        DeckRun.design(
            DeckRun.survey(IfcEmitter.emit(deck.sample, Mix.PLAIN), "deck.ifc"),
            Scope.OUTSIDE,
            KitReader.builtIn());
    for (DrainCase one : DrainCases.of(design.survey().bays(), design.layout())) {
      compare(one, deck.drops);
    }
  }

  private static void compare(DrainCase one, int drops) {
    DrainProof proof = WaterProver.prove(one);
    DropMarch march = new DropMarch(one);
    Random random = new Random(one.field().hashCode() + drops);
    Map<String, Integer> ends = new TreeMap<>();
    Map<String, Integer> lost = new TreeMap<>();
    for (int i = 0; i < drops; i++) {
      Vec2 p = place(one.catchments(), random);
      DropMarch.End end = march.drop(p.x(), p.y(), random);
      ends.merge(end.outlet().orElse("lost"), 1, Integer::sum);
      if (end.outlet().isEmpty()) {
        lost.merge(end.last().replaceAll("[0-9]+", "#"), 1, Integer::sum);
      }
    }
    double laps = shortLaps(proof) / proof.area();
    for (OutletShare share : proof.outlets()) {
      double expected = share.area() / proof.area();
      int seen = ends.getOrDefault(share.outlet(), 0);
      assertThat(isLikely(seen, drops, expected - EDGES, expected + laps + EDGES))
          .as(
              "%s: %d of %d at %s, expected a share of %s; lost %s; leaks %s",
              one.field(), seen, drops, share.outlet(), expected, lost, causes(proof))
          .isTrue();
    }
    int dry = drops - ends.getOrDefault("lost", 0);
    double expected = proof.dryFraction();
    assertThat(isLikely(dry, drops, expected - EDGES, expected + laps + EDGES))
        .as(
            "%s: %d of %d dry, expected a share of %s; lost %s; leaks %s",
            one.field(), dry, drops, expected, lost, causes(proof))
        .isTrue();
    DropsAgainstProofTest.drops += drops;
    lostInAll += drops - dry;
    expectedInAll += drops * (1 - expected - laps);
  }

  /** What the tolerance of a single deck would hide is seen when the drops of all are added up. */
  @AfterAll
  static void theDropsOfAllDecksTogetherAgreeFourTimesAsClosely() {
    double expected = expectedInAll / drops;
    System.getLogger("drops")
        .log(System.Logger.Level.INFO, lostInAll + " of " + drops + " lost, expected " + expected);
    assertThat(isLikely(lostInAll, drops, expected - EDGES_OF_ALL, expected + EDGES_OF_ALL))
        .as("%d of %d lost, expected a share of %s", lostInAll, drops, expected)
        .isTrue();
  }

  /** Whether a count is not too rare for any share between two, by the binomial distribution. */
  private static boolean isLikely(int seen, int of, double least, double most) {
    return atMost(seen, of, Math.max(0, least)) > RARE
        && 1 - atMost(seen - 1, of, Math.min(1, most)) > RARE;
  }

  /** Probability of no more than so many, each with a chance of {@code p}. */
  private static double atMost(int count, int of, double p) {
    if (p <= 0 || p >= 1) {
      return p <= 0 || count >= of ? (count < 0 ? 0 : 1) : 0;
    }
    double sum = 0;
    double log = of * Math.log1p(-p);
    for (int k = 0; k <= count; k++) {
      sum += Math.exp(log);
      log += Math.log((of - k) / (k + 1.0) * p / (1 - p));
    }
    return Math.min(1, sum);
  }

  /** A drop knows no least lap: it crosses where two lengths of rail butt, and may end dry. */
  private static double shortLaps(DrainProof proof) {
    return proof.leaks().stream()
        .filter(l -> l.cause() == LeakCause.SHORT_LAP)
        .mapToDouble(Leak::area)
        .sum();
  }

  private static Map<LeakCause, Double> causes(DrainProof proof) {
    Map<LeakCause, Double> causes = new TreeMap<>();
    proof.leaks().forEach(l -> causes.merge(l.cause(), l.area(), Double::sum));
    return causes;
  }

  /** Spread evenly over all catchments, by rejection. */
  private static Vec2 place(List<Catchment> catchments, Random random) {
    double[] box = {9e9, -9e9, 9e9, -9e9};
    for (Catchment c : catchments) {
      for (Vec2 p : c.outline()) {
        box[0] = Math.min(box[0], p.x());
        box[1] = Math.max(box[1], p.x());
        box[2] = Math.min(box[2], p.y());
        box[3] = Math.max(box[3], p.y());
      }
    }
    while (true) {
      Vec2 p =
          new Vec2(
              box[0] + random.nextDouble() * (box[1] - box[0]),
              box[2] + random.nextDouble() * (box[3] - box[2]));
      if (catchments.stream().anyMatch(c -> isInside(p, c.outline()))) {
        return p;
      }
    }
  }

  private static boolean isInside(Vec2 p, List<Vec2> ring) {
    boolean inside = false;
    for (int i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
      Vec2 a = ring.get(i);
      Vec2 b = ring.get(j);
      if (a.y() > p.y() != b.y() > p.y()
          && p.x() < (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y()) + a.x()) {
        inside = !inside;
      }
    }
    return inside;
  }
}
