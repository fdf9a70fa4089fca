package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;
import org.underlee.samples.Mix;
import org.underlee.samples.Xyz;

/** Ways of writing a case down: nothing in the file has a name, a type or a telling class. */
final class CaseMix {
  private static final List<Mix.LengthUnit> UNITS =
      List.of(
          Mix.LengthUnit.MILLIMETRE,
          Mix.LengthUnit.METRE,
          Mix.LengthUnit.FOOT,
          Mix.LengthUnit.INCH);

  /** Swept, mapped, B-rep, triangles, and over-long sweeps that are cut. */
  private static final List<Mix.Body> BODIES =
      List.of(
          Mix.Body.POLYLINE, Mix.Body.MAPPED, Mix.Body.BREP, Mix.Body.TRIANGLES, Mix.Body.CLIPPED);

  /** How far from the origin, in metres: every third at it, every third far beyond any site. */
  private static final double[] REACH = {0, 100_000, 10_000_000};

  private CaseMix() {}

  static Mix of(long seed) {
    Random random = new Random(seed * 7919 + 17);
    double reach = REACH[random.nextInt(REACH.length)];
    double way = 2 * Math.PI * random.nextDouble();
    Xyz offset =
        new Xyz(
            reach * StrictMath.cos(way), reach * StrictMath.sin(way), 500 * random.nextDouble());
    return Mix.PLAIN
        .with(pick(List.of(Mix.Schema.values()), random))
        .with(pick(UNITS, random))
        .with(pick(BODIES, random))
        .with(pick(List.of(Mix.Classing.BEAM, Mix.Classing.MEMBER, Mix.Classing.PROXY), random))
        .with(Mix.Naming.NONE)
        .with(pick(List.of(Mix.Order.values()), random), seed)
        .placed(
            360 * random.nextDouble(),
            offset,
            pick(List.of(Mix.Where.values()), random),
            pick(List.of(Mix.Nesting.values()), random));
  }

  private static <T> T pick(List<T> values, Random random) {
    return values.get(random.nextInt(values.size()));
  }
}
