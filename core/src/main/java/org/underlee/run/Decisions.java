package org.underlee.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.AssumedJoists;
import org.underlee.ifc.IfcModel;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.kit.PanValue;
import org.underlee.layout.Scope;
import org.underlee.units.RainRates;
import org.underlee.writeback.Provenance;
import org.underlee.writeback.Strip;

/**
 * What a person decided for an assembly, as its property set in a drained model keeps it.
 *
 * @param kit its name
 * @param kitVersion that it had then
 * @param fall drop over run
 * @param rain as the user named it, where it is not the usual one
 * @param deck the one deck that was asked for
 * @param overrides text of the overrides file
 * @param assumed joists assumed under a slab
 * @param project whose GlobalId ours derive from, where it is not the model's own
 * @param names that a resync kept, as {@link Naming} writes them
 */
record Decisions(
    String kit,
    String kitVersion,
    double fall,
    Optional<String> rain,
    Optional<String> deck,
    Optional<String> overrides,
    Optional<String> assumed,
    Optional<String> names,
    Optional<String> project) {
  private static final String ASSEMBLY = "IFCELEMENTASSEMBLY";

  /** Runs for one of fall are whole or simple numbers: more digits are rounding. */
  private static final double RUN_STEPS = 1e6;

  /** A millionth of a millimetre in an hour: digits below are rounding. */
  private static final double RATE_STEPS = 1e6;

  private static final String ADVICE = "Give a model that design has written.";

  /** What is kept of a design besides its kit: only what the user said. */
  static Map<String, String> told(
      Survey survey, Scope scope, Storm storm, Map<String, String> kept) {
    Map<String, String> told = new TreeMap<>(kept);
    if (!storm.equals(RainData.builtIn().service(RainData.ANYWHERE))) {
      told.put(Provenance.RAIN, words(storm));
    }
    scope.deck().ifPresent(d -> told.put(Provenance.DECK, d));
    survey.request().overrides().ifPresent(o -> told.put(Provenance.OVERRIDES, o.text()));
    return told;
  }

  /** The place of the rain table where it is one; else the rate. */
  private static String words(Storm storm) {
    String place = storm.name().split(":", -1)[0];
    boolean known = RainData.builtIn().meant(place).filter(storm::equals).isPresent();
    double rate = Math.rint(storm.intensity() / RainRates.MM_PER_HOUR * RATE_STEPS) / RATE_STEPS;
    return known ? place : String.format(Locale.ROOT, "%smm/h", rate);
  }

  /**
   * Reads them from a drained model.
   *
   * @throws InputException when no assembly of ours is in it, or two differ in what serves both
   */
  static Decisions in(IfcModel model) {
    List<Decisions> all = new ArrayList<>();
    for (int i : model.step().ofKeyword(ASSEMBLY)) {
      Optional.ofNullable(model.properties(model.step().id(i)).get(Strip.LAYOUT_SET))
          .map(Decisions::of)
          .ifPresent(all::add);
    }
    if (all.isEmpty()) {
      throw new InputException(
          Place.NOWHERE.inFile(model.step().name()), "there is no assembly of ours in it", ADVICE);
    }
    return all.get(0);
  }

  private static Decisions of(Map<String, String> set) {
    return new Decisions(
        set.getOrDefault("Kit", ""),
        set.getOrDefault("KitVersion", ""),
        Double.parseDouble(set.getOrDefault("Fall", "0")),
        Optional.ofNullable(set.get(Provenance.RAIN)),
        Optional.ofNullable(set.get(Provenance.DECK)),
        Optional.ofNullable(set.get(Provenance.OVERRIDES)),
        Optional.ofNullable(set.get("AssumedFraming")),
        Optional.ofNullable(set.get(Provenance.NAMES)),
        Optional.ofNullable(set.get(Provenance.PROJECT)));
  }

  /**
   * The kit with the fall that was decided.
   *
   * @param given the kit's file, where it is not one of the program's own
   */
  Kit kit(Optional<Kit> given) {
    Kit own = given.orElseGet(this::builtIn);
    double run = Math.rint(RUN_STEPS / fall) / RUN_STEPS;
    boolean same = Math.abs(own.get(PanValue.RUN_PER_FALL) - run) * RUN_STEPS < 1;
    return same ? own : own.with(PanValue.RUN_PER_FALL, run, "kept from the drained model");
  }

  private Kit builtIn() {
    return KitReader.allBuiltIn().stream()
        .filter(k -> k.id().equals(kit))
        .findFirst()
        .orElseThrow(
            () ->
                new InputException(
                    Place.NOWHERE,
                    "the assembly was made with the kit \"" + kit + "\", which is not built in",
                    "Name the kit's file with --kit."));
  }

  Storm storm() {
    return rain.flatMap(RainData.builtIn()::meant)
        .orElseGet(() -> RainData.builtIn().service(RainData.ANYWHERE));
  }

  Optional<AssumedJoists> assume() {
    return assumed.map(AssumedJoists::parse);
  }

  Optional<Overrides> told() {
    return overrides.map(text -> Overrides.read(text, "the overrides kept in the drained model"));
  }
}
