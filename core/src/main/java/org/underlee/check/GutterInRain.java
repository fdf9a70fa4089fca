package org.underlee.check;

import static org.underlee.kit.DrainValue.DOWNSPOUT_DIAMETER;
import static org.underlee.kit.DrainValue.DOWNSPOUT_NOMINAL;
import static org.underlee.kit.DrainValue.GUTTER_DEPTH;
import static org.underlee.kit.DrainValue.GUTTER_WIDTH;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import org.underlee.drainage.flow.CapacityData;
import org.underlee.drainage.flow.Downspout;
import org.underlee.drainage.flow.GutterRun;
import org.underlee.drainage.flow.Inflow;
import org.underlee.drainage.flow.Opening;
import org.underlee.drainage.flow.Outlet;
import org.underlee.drainage.flow.ProofData;
import org.underlee.drainage.flow.Rater;
import org.underlee.drainage.flow.Rating;
import org.underlee.drainage.flow.Sizing;
import org.underlee.drainage.flow.Storm;
import org.underlee.drainage.flow.Trough;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Field;
import org.underlee.geom.Interval;
import org.underlee.kit.Items;
import org.underlee.kit.Kit;
import org.underlee.layout.GutterCapacity;
import org.underlee.layout.Onto;
import org.underlee.layout.Wishes;
import org.underlee.units.Lengths;

/**
 * A stretch of a kit's gutter in one rain, with its outlet and downspout, by every method that the
 * program knows. It is taken as level: its small fall is kept in hand for dirt.
 *
 * <p>Most stretches of a long gutter are alike but for rounding. Places are taken to the nanometre
 * and flows to a billionth of a litre a second, so that those are one, and each is solved once.
 */
public final class GutterInRain implements GutterCapacity {
  private static final double LEVEL = 0;

  /** Metres and cubic metres a second: what differs by less is alike. */
  private static final double PLACE_STEP = 1e-9;

  private static final double FLOW_STEP = 1e-12;

  private final Storm storm;
  private final ProofData data;
  private final CapacityData capacities;
  private final Rater rater;
  private final WallsAbove walls;
  private final Map<Drained, Boolean> carried = new ConcurrentHashMap<>();
  private final Map<Drained, Optional<Rating>> used = new ConcurrentHashMap<>();
  private final List<Onto> onto;

  /** A gutter and what it falls to. */
  private record Drained(GutterRun run, Downspout spout) {}

  /**
   * @param near what stands near the framing, walls among it
   * @param wishes rain of roofs that comes onto the decks, and the user's own tables
   * @throws org.underlee.finding.InputException when those tables cannot be used
   */
  public GutterInRain(Storm storm, ProofData data, List<BuildingElement> near, Wishes wishes) {
    this.onto = wishes.onto();
    this.storm = storm;
    this.walls = WallsAbove.among(near, data.get(ProofData.Key.WALL_SHARE));
    this.data = data;
    this.capacities =
        wishes
            .tables()
            .map(t -> CapacityData.builtIn().with(t.file(), t.text()))
            .orElseGet(CapacityData::builtIn);
    this.rater = new Rater(capacities, data.get(ProofData.Key.FREEBOARD_MM) * Lengths.MM);
  }

  @Override
  public double fromAbove(Field field, Interval across) {
    return fromWalls(field, across)
        + onto.stream()
            .filter(o -> o.isOn(field))
            .filter(o -> across.contains(field.frame().toLocal(o.place()).x()))
            .mapToDouble(Onto::area)
            .sum();
  }

  /** The user's own tables. */
  List<CapacityData.Table> own() {
    return capacities.own();
  }

  /** Of {@link #fromAbove} the part that the proof does not follow. */
  double fromWalls(Field field, Interval across) {
    return walls.area(field, across);
  }

  @Override
  public Use of(Kit kit, Interval stretch, double outlet, List<Share> shares) {
    return run(kit, stretch, outlet, shares)
        .flatMap(
            run ->
                used.computeIfAbsent(
                    new Drained(run, spout(kit)), d -> rater.hardest(d.run, d.spout)))
        .map(r -> new Use(r.use(), r.capacity().words()))
        .orElse(new Use(0, ""));
  }

  @Override
  public boolean carries(
      Kit kit, Interval stretch, double outlet, List<Share> shares, double times) {
    return run(kit, stretch, outlet, shares)
        .map(run -> times == 1 ? run : run.scaled(times))
        .map(
            run ->
                carried.computeIfAbsent(
                    new Drained(run, spout(kit)), d -> rater.carries(d.run, d.spout)))
        .orElse(true);
  }

  /** What every method says; nothing where no water comes in. */
  List<Rating> ratings(Kit kit, Interval stretch, double outlet, List<Share> shares) {
    return run(kit, stretch, outlet, shares)
        .map(run -> rater.rate(run, spout(kit)).ratings())
        .orElse(List.of());
  }

  /** Empty where no water comes in. */
  private Optional<GutterRun> run(Kit kit, Interval stretch, double outlet, List<Share> shares) {
    List<Inflow> inflows = inflows(stretch, shares);
    if (inflows.isEmpty()) {
      return Optional.empty();
    }
    double thick = kit.item(Items.GUTTER).thickness();
    return Optional.of(
        new GutterRun(
            stepped(stretch.length(), PLACE_STEP),
            Trough.box(kit.get(GUTTER_WIDTH) - 2 * thick, kit.get(GUTTER_DEPTH) - thick),
            LEVEL,
            data.get(ProofData.Key.ROUGHNESS_SMOOTH),
            inflows,
            List.of(
                Outlet.hole(stepped(outlet - stretch.from(), PLACE_STEP), spout(kit).clear()))));
  }

  private static double stepped(double value, double step) {
    return Math.rint(value / step) * step;
  }

  private List<Inflow> inflows(Interval stretch, List<Share> shares) {
    return shares.stream()
        .filter(s -> s.area() > 0 && s.across().length() > 0)
        .map(
            s ->
                new Inflow(
                    stepped(s.across().from() - stretch.from(), PLACE_STEP),
                    stepped(s.across().to() - stretch.from(), PLACE_STEP),
                    stepped(storm.flow(s.area()), FLOW_STEP)))
        .toList();
  }

  /**
   * The smallest set of the trade's common sizes that carries what drips into a stretch, with its
   * outlet at an end or one at each, or the one that is nearest to it.
   *
   * @param room height that the gutter may take
   */
  Sizing.Answer smallest(Interval stretch, List<Share> shares, double room) {
    return new Sizing(rater)
        .choose(
            data.commonSizes(LEVEL),
            new Sizing.Need(
                stepped(stretch.length(), PLACE_STEP),
                inflows(stretch, shares),
                data.get(ProofData.Key.ROUGHNESS_SMOOTH),
                room));
  }

  /** The kit's downspout, by the size that it states, if it states one. */
  Downspout spout(Kit kit) {
    Opening clear =
        new Opening.Round(kit.get(DOWNSPOUT_DIAMETER) - 2 * kit.item(Items.DOWNSPOUT).thickness());
    OptionalDouble nominal = kit.find(DOWNSPOUT_NOMINAL);
    return nominal.isPresent()
        ? Downspout.nominal(clear, nominal.getAsDouble())
        : Downspout.clear(clear, data.metres(ProofData.Key.SPOUT_WALL_MM));
  }
}
