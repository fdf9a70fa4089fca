package org.underlee.bay;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.underlee.geom.Interval;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/**
 * Where a field's high line can be: nothing that stands in a bay comes too near to it, but for
 * blocking in a row, whose middle it may be. Stations are metres from the field's high end.
 */
public final class HighLinePlaces {
  /** Pans' heads, a collar's sheet and a hand need this much on each side of the line. */
  private static final double ROOM = 0.2;

  /** Blocking nailed from both sides stands this far off its row's line, at most. */
  private static final double STAGGER = 0.06;

  /** A line that nobody put there is no nearer to an end than this share of the run. */
  private static final double FROM_END = 0.25;

  /** Blocking is high enough to close pans' heads when it is this share of the joists' depth. */
  private static final double DEEP = 0.75;

  /** Places nearer than this are one. */
  private static final double SAME = 1e-9;

  /** Of a millimetre: what is this little below one is on it, as sums of doubles are not exact. */
  private static final double ON_MARK = 1e-6;

  private final List<Bay> bays;
  private final Interval run;

  public HighLinePlaces(FieldBays whole) {
    this.bays = whole.bays();
    this.run =
        new Interval(
            bays.stream().mapToDouble(b -> b.stretch().from()).min().orElse(0),
            bays.stream().mapToDouble(b -> b.stretch().to()).max().orElse(0));
  }

  /** The station nearest to the middle at which the line can be. */
  OptionalDouble nearestToMiddle() {
    double middle = run.middle();
    double most = run.length() * (0.5 - FROM_END);
    DoubleStream beside =
        standing().flatMapToDouble(s -> DoubleStream.of(s.from() - ROOM, s.to() + ROOM));
    return nearest(
        Stream.of(DoubleStream.of(middle), beside, rows()).flatMapToDouble(v -> v),
        middle,
        v -> Math.abs(v - middle) <= most && isFree(v));
  }

  /**
   * The line that is meant by a station: the middle of a row of blocking when it is read off a tape
   * as that, else the station itself; empty when the line cannot be there.
   */
  OptionalDouble at(double station) {
    OptionalDouble row =
        nearest(rows(), station, v -> Math.abs(v - station) <= Lengths.TAPE_MARK && isFree(v));
    return row.isPresent() || !isFree(station) ? row : OptionalDouble.of(station);
  }

  /** Why the line cannot be at a station; empty when it can. */
  public Optional<Words> wrong(double station) {
    Interval leaving = leavingRuns();
    if (!leaving.contains(station)) {
      return Optional.of(
          Words.of(
              "its bays run from %s to %s and each side needs a run of %s or more",
              Quantity.length(run.from()),
              Quantity.length(run.to()),
              Quantity.length(Bay.SHORTEST_RUN)));
    }
    return at(station).isPresent()
        ? Optional.empty()
        : Optional.of(tooNear(station).orElseGet(() -> offRow(station)));
  }

  /** The nearest places before and after a station where the line can be, in whole millimetres. */
  public List<Double> beside(double station) {
    Interval leaving = leavingRuns();
    DoubleStream before =
        Stream.concat(Stream.of(leaving.to()), standing().map(s -> s.from() - ROOM))
            .mapToDouble(v -> Math.floor(v / Lengths.MM + ON_MARK) * Lengths.MM);
    DoubleStream behind =
        Stream.concat(Stream.of(leaving.from()), standing().map(s -> s.to() + ROOM))
            .mapToDouble(v -> Math.ceil(v / Lengths.MM - ON_MARK) * Lengths.MM);
    DoubleStream on = rows().map(v -> Math.rint(v / Lengths.MM) * Lengths.MM);
    double[] can =
        Stream.of(before, behind, on)
            .flatMapToDouble(v -> v)
            .filter(v -> leaving.contains(v) && at(v).isPresent())
            .toArray();
    return Stream.of(
            nearest(DoubleStream.of(can), station, v -> v < station),
            nearest(DoubleStream.of(can), station, v -> v > station))
        .flatMap(v -> v.stream().boxed())
        .toList();
  }

  /** Where each side has as much run as anything hung there needs. */
  private Interval leavingRuns() {
    return new Interval(run.from() + Bay.SHORTEST_RUN, run.to() - Bay.SHORTEST_RUN);
  }

  private static OptionalDouble nearest(DoubleStream all, double to, DoublePredicate which) {
    return all.filter(which)
        .boxed()
        .min(Comparator.comparingDouble((Double v) -> Math.abs(v - to)).thenComparing(v -> v))
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }

  /** What comes too near to a line at a station, in the first bay where something does. */
  private Optional<Words> tooNear(double station) {
    return crossed(station)
        .flatMap(
            b ->
                inTheWay(b, station)
                    .map(
                        s ->
                            Words.of(
                                "in %s something stands from %s to %s and the line must keep %s off"
                                    + " it",
                                b.id(),
                                Quantity.length(s.from()),
                                Quantity.length(s.to()),
                                Quantity.length(ROOM))))
        .findFirst();
  }

  private Words offRow(double station) {
    return Words.of(
        "blocking stands there in a row: the line must be in the row's middle at %s or keep %s off"
            + " the blocking",
        Quantity.length(middle(rowOf(station))), Quantity.length(ROOM));
  }

  /** The middles of the rows that things stand in. */
  private DoubleStream rows() {
    return standing().flatMapToDouble(s -> DoubleStream.of(s.middle(), middle(rowAt(s.middle()))));
  }

  /** What stands about as far along as a station. */
  private double[] rowAt(double station) {
    return standing()
        .mapToDouble(Interval::middle)
        .filter(v -> Math.abs(v - station) <= 2 * STAGGER)
        .sorted()
        .toArray();
  }

  /** Blocking that would close the bays at a line there. */
  private double[] rowOf(double v) {
    return closing(v).mapToDouble(c -> c.stretch().middle()).sorted().toArray();
  }

  private static double middle(double[] row) {
    return (row[0] + row[row.length - 1]) / 2;
  }

  private Stream<Interval> standing() {
    return bays.stream().flatMap(HighLinePlaces::standing);
  }

  /** What stands in a bay, as stations; what runs along it is everywhere. */
  private static Stream<Interval> standing(Bay bay) {
    return Stream.concat(
        Stream.concat(bay.blocking().stream(), bay.bridging().stream()).map(Block::stretch),
        bay.crossings().stream().filter(c -> c.way() != Way.ALONG).map(Crossing::stretch));
  }

  /** Bays that run across a station. */
  private Stream<Bay> crossed(double v) {
    return bays.stream().filter(b -> b.stretch().contains(v));
  }

  private boolean isFree(double v) {
    double[] row = rowOf(v);
    boolean centred = row.length == 0 || Math.abs(middle(row) - v) < SAME;
    return centred && crossed(v).allMatch(b -> inTheWay(b, v).findAny().isEmpty());
  }

  private static Stream<Interval> inTheWay(Bay bay, double v) {
    Optional<Interval> closing = closing(bay, v).map(Block::stretch);
    return standing(bay)
        .filter(s -> !closing.equals(Optional.of(s)))
        .filter(s -> s.distance(v) < ROOM - SAME);
  }

  /** Blocking on the line that closes the bays there. */
  Stream<Block> closing(double v) {
    return crossed(v).flatMap(b -> closing(b, v).stream());
  }

  /** Blocking on the line that closes the bay there. */
  static Optional<Block> closing(Bay bay, double v) {
    return bay.blocking().stream()
        .filter(b -> Math.abs(b.stretch().middle() - v) <= STAGGER)
        .filter(b -> b.heights().length() >= DEEP * (bay.joistTop(v) - bay.joistBottom(v)))
        .findFirst();
  }
}
