package org.underlee.drainage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Place;
import org.underlee.finding.Rule;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.RainRates;
import org.underlee.units.Words;

/** Says in words what a proof shows: leaks of one cause in one field are told together. */
public final class DrainageFindings {
  /** Leaks of a cause that take less than this share of the rain in scope are drips. */
  private static final double DRIPS = 0.005;

  /** Standing water of less than this, m³ (a tenth of a litre), is told of nowhere. */
  private static final double WORTH_SAYING = 0.0001;

  private static final double RAIN = DrainProof.TEST_RAIN * RainRates.MM_PER_HOUR;

  private record Cause(String field, LeakCause cause) {}

  private final DrainProof proof;
  private final Function<String, Place> places;
  private final Predicate<Leak> told;
  private final List<Finding> findings = new ArrayList<>();

  private DrainageFindings(DrainProof proof, Function<String, Place> places, Predicate<Leak> told) {
    this.told = told;
    this.proof = proof;
    this.places = places;
  }

  /**
   * The findings of a proof.
   *
   * @param places where a part is in a file, {@link Place#NOWHERE} where it is in none
   */
  public static List<Finding> of(DrainProof proof, Function<String, Place> places) {
    return of(proof, places, leak -> false);
  }

  /**
   * The findings of a proof, without what is told already.
   *
   * @param told whether another finding says why the deck is open there
   */
  public static List<Finding> of(
      DrainProof proof, Function<String, Place> places, Predicate<Leak> told) {
    return new DrainageFindings(proof, places, told).all();
  }

  /** How much rain falls through beyond a field's gutter; empty when none does. */
  public static Optional<Words> beyondGutter(DrainProof proof, String field) {
    double area =
        area(proof.leaks().stream().filter(l -> isBeyond(l) && l.field().equals(field)).toList());
    return area > 0 ? Optional.of(amount(area)) : Optional.empty();
  }

  private static boolean isBeyond(Leak leak) {
    return leak.cause() == LeakCause.BEYOND_GUTTER;
  }

  private static Words amount(double area) {
    return Words.of(
        "%s of deck, %s in rain of %s",
        Quantity.area(area), Quantity.of(Kind.DRIP, area * RAIN), Quantity.of(Kind.RAIN, RAIN));
  }

  private List<Finding> all() {
    Map<Cause, List<Leak>> causes = new LinkedHashMap<>();
    for (Leak leak : proof.leaks()) {
      if (!told.test(leak)) {
        causes
            .computeIfAbsent(new Cause(leak.field(), leak.cause()), c -> new ArrayList<>())
            .add(leak);
      }
    }
    Map<String, List<Leak>> drips = new LinkedHashMap<>();
    causes.forEach(
        (cause, leaks) -> {
          if (rule(cause.cause, area(leaks)).equals(DrainageRules.DRIP)) {
            drips.computeIfAbsent(cause.field, f -> new ArrayList<>()).addAll(leaks);
          } else {
            leaks(cause, leaks);
          }
        });
    drips.forEach(this::drips);
    proof.flat().forEach(this::flat);
    proof.ponds().stream().filter(p -> p.volume() > WORTH_SAYING).forEach(this::pond);
    proof.blocked().forEach(this::blocked);
    return findings;
  }

  private void leaks(Cause cause, List<Leak> leaks) {
    double area = area(leaks);
    Leak worst = leaks.get(0);
    String part = worst.parts().isEmpty() ? "" : worst.parts().get(0);
    Words message =
        Words.of(
            "%s: %s%s; %s%s.",
            cause.field,
            cause.cause.why(),
            part.isEmpty() ? "" : " (" + part + ")",
            amount(area),
            leaks.size() == 1 ? "" : Words.of(", in %s places", leaks.size()));
    findings.add(
        Finding.measured(
            rule(cause.cause, area),
            part.isEmpty() ? Place.NOWHERE : places.apply(part),
            message,
            new Measure(Quantity.of(Kind.SHARE, area / proof.rain()), Quantity.of(Kind.SHARE, 0)),
            Fix.of(cause.cause.fix())));
  }

  private static Words told(LeakCause cause, int places) {
    String noun = places == 1 ? "place" : "places";
    return Words.of("%s, in %s %s", cause.why(), Quantity.count(places), noun);
  }

  private static double area(List<Leak> leaks) {
    return leaks.stream().mapToDouble(Leak::area).sum();
  }

  /** Drips of all causes in a field, told in one line: which causes, the most water first. */
  private void drips(String field, List<Leak> leaks) {
    Map<LeakCause, List<Leak>> causes =
        leaks.stream().collect(Collectors.groupingBy(Leak::cause, Collectors.toList()));
    List<LeakCause> order =
        causes.keySet().stream()
            .sorted(
                Comparator.comparingDouble(
                        (LeakCause c) -> -area(causes.getOrDefault(c, List.of())))
                    .thenComparing(c -> c))
            .toList();
    List<Words> told =
        order.stream().map(c -> told(c, causes.getOrDefault(c, List.of()).size())).toList();
    double area = area(leaks);
    findings.add(
        Finding.measured(
            DrainageRules.DRIP,
            Place.NOWHERE,
            Words.of("%s: drips from %s: %s.", field, amount(area), Words.join("; ", told)),
            new Measure(Quantity.of(Kind.SHARE, area / proof.rain()), Quantity.of(Kind.SHARE, 0)),
            Fix.of(order.get(0).fix())));
  }

  private Rule rule(LeakCause cause, double area) {
    if (cause.isOpenDeck()) {
      return DrainageRules.OPEN_DECK;
    }
    if (cause == LeakCause.NO_DOWNSPOUT || cause == LeakCause.SHORT_DOWNSPOUT) {
      return DrainageRules.NO_WAY_DOWN;
    }
    return area < DRIPS * proof.rain() ? DrainageRules.DRIP : DrainageRules.LEAK;
  }

  private void flat(String part) {
    findings.add(
        Finding.measured(
            DrainageRules.FLAT,
            places.apply(part),
            Words.of("%s has no fall to the gutter.", part),
            new Measure(Quantity.fall(0), Quantity.fall(WaterRules.LEVEL)),
            Fix.of("Set the part to the kit's fall.")));
  }

  private void pond(StandingWater pond) {
    findings.add(
        Finding.measured(
            DrainageRules.STANDS,
            places.apply(pond.part()),
            Words.of(
                "%s: water stands %s deep and weighs %s, before it runs on.",
                pond.part(), Quantity.length(pond.depth()), Quantity.of(Kind.MASS, pond.mass())),
            Measure.lengths(pond.depth(), WaterRules.FILM),
            Fix.of("Give the part a fall to its outlet without a low spot.")));
  }

  private void blocked(StandingWater water) {
    String outlet = water.blocked().orElse("");
    findings.add(
        Finding.of(
            DrainageRules.BLOCKED,
            places.apply(outlet),
            Words.of(
                "%s blocked: water stands %s deep and weighs %s. Where it goes then: %s.",
                outlet,
                Quantity.length(water.depth()),
                Quantity.of(Kind.MASS, water.mass()),
                water.spillsTo()),
            Fix.of("Keep a strainer in the outlet clean, or add a second outlet or an overflow.")));
  }
}
