package org.underlee.run;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.AssumedJoists;
import org.underlee.ifc.IfcModel;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.DryZone;
import org.underlee.layout.Onto;
import org.underlee.layout.OutletWishes;
import org.underlee.layout.OwnTables;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
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
 * @param scope the deck or storey that was asked for, and what was fixed about it
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
    Scope scope,
    Optional<String> overrides,
    Optional<String> assumed,
    Optional<String> names,
    Optional<String> project) {
  private static final String ASSEMBLY = "IFCELEMENTASSEMBLY";

  /** Runs for one of fall are whole or simple numbers: more digits are rounding. */
  private static final double RUN_STEPS = 1e6;

  /** A millionth of a millimetre in an hour: digits below are rounding. */
  private static final double RATE_STEPS = 1e6;

  private static final String KEPT_TABLES = "the capacity tables kept in the drained model";

  private static final String ADVICE = "Give a model that design has written.";

  /** What is kept of a design besides its kit: only what the user said. */
  static Map<String, String> told(
      Survey survey, Scope scope, Storm storm, Map<String, String> kept) {
    Map<String, String> told = new TreeMap<>(kept);
    if (!storm.equals(RainData.builtIn().service(RainData.ANYWHERE))) {
      told.put(Provenance.RAIN, words(storm));
    }
    told.putAll(told(scope));
    survey.request().overrides().ifPresent(o -> told.put(Provenance.OVERRIDES, o.text()));
    return told;
  }

  /**
   * What was asked for and fixed, by the name of the property that keeps it; without what is told
   * one by one: roofs that drain onto decks, and the user's own tables.
   */
  Map<String, String> asked() {
    Map<String, String> asked = told(scope);
    asked.keySet().removeAll(Set.of(Provenance.ALSO_DRAINS, Provenance.OWN_TABLES));
    return asked;
  }

  private static Map<String, String> told(Scope scope) {
    Map<String, String> told = new TreeMap<>();
    Wishes wishes = scope.wishes();
    scope.deck().ifPresent(d -> told.put(Provenance.DECK, d));
    scope.storey().ifPresent(s -> told.put(Provenance.STOREY, s));
    if (wishes.boardsOff()) {
      told.put(Provenance.BOARDS_OFF, Boolean.toString(true));
    }
    if (!wishes.leaveOpen().isEmpty()) {
      told.put(Provenance.LEFT_OPEN, String.join(" ", new TreeSet<>(wishes.leaveOpen())));
    }
    wishes.seat().ifPresent(s -> told.put(Provenance.SEAT, Double.toString(s)));
    wishes.lowEnd().ifPresent(l -> told.put(Provenance.LOW_END, l));
    wishes.dryZone().ifPresent(z -> told.put(Provenance.DRY_ZONE, z.text()));
    if (!wishes.outlets().places().isEmpty()) {
      told.put(Provenance.OUTLETS, wishes.outlets().text());
    }
    wishes.tables().ifPresent(t -> told.put(Provenance.OWN_TABLES, t.text()));
    if (!wishes.onto().isEmpty()) {
      told.put(
          Provenance.ALSO_DRAINS,
          wishes.onto().stream().map(Onto::text).collect(Collectors.joining(" ")));
    }
    return told;
  }

  private static Scope scope(Map<String, String> set) {
    String open = set.getOrDefault(Provenance.LEFT_OPEN, "");
    OptionalDouble seat =
        set.containsKey(Provenance.SEAT)
            ? OptionalDouble.of(Double.parseDouble(set.get(Provenance.SEAT)))
            : OptionalDouble.empty();
    Wishes wishes =
        new Wishes(
            set.containsKey(Provenance.BOARDS_OFF),
            open.isEmpty() ? Set.of() : Set.of(open.split(" ")),
            seat,
            Optional.ofNullable(set.get(Provenance.LOW_END)),
            Optional.ofNullable(set.get(Provenance.DRY_ZONE)).map(DryZone::parse),
            Optional.ofNullable(set.get(Provenance.OUTLETS))
                .map(OutletWishes::parse)
                .orElse(OutletWishes.NONE),
            onto(set),
            Optional.ofNullable(set.get(Provenance.OWN_TABLES))
                .map(text -> new OwnTables(KEPT_TABLES, text)));
    return new Scope(
        Optional.ofNullable(set.get(Provenance.DECK)),
        Optional.ofNullable(set.get(Provenance.STOREY)),
        wishes);
  }

  private static List<Onto> onto(Map<String, String> set) {
    return Optional.ofNullable(set.get(Provenance.ALSO_DRAINS)).stream()
        .flatMap(text -> Stream.of(text.split(" ")))
        .map(Onto::parse)
        .toList();
  }

  /** The rain of roofs that a drained model's assemblies are for; none where it keeps none. */
  static List<Onto> onto(IfcModel model) {
    return sets(model).map(Decisions::onto).findFirst().orElse(List.of());
  }

  /** What a drained model keeps of the overrides that its assemblies are for, if there were any. */
  static Optional<Overrides> told(IfcModel model) {
    return sets(model).findFirst().map(Decisions::of).flatMap(Decisions::told);
  }

  private static Stream<Map<String, String>> sets(IfcModel model) {
    return Arrays.stream(model.step().ofKeyword(ASSEMBLY))
        .mapToObj(
            i -> Optional.ofNullable(model.properties(model.step().id(i)).get(Strip.LAYOUT_SET)))
        .flatMap(Optional::stream);
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
    List<Decisions> all = sets(model).map(Decisions::of).toList();
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
        scope(set),
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
    boolean same = Math.abs(own.get(DrainValue.RUN_PER_FALL) - run) * RUN_STEPS < 1;
    return same ? own : own.with(DrainValue.RUN_PER_FALL, run, "kept from the drained model");
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
