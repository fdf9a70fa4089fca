package org.underlee.bay;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.underlee.framing.Field;
import org.underlee.framing.FieldHalves;
import org.underlee.framing.Member;
import org.underlee.framing.Role;
import org.underlee.framing.Support;
import org.underlee.geom.Interval;

/**
 * Parts a field and its bays at a high line, from which they fall to both ends. The line is as near
 * to the middle of the run as nothing that stands in a bay comes too near to it; blocking that
 * stands in line on it may stay: the pans of both sides then begin at its faces.
 *
 * <p>Only what stands free may drain both ways: at a house half of the water would go to it.
 */
public final class BothWays {
  /** Pans' heads, a collar's sheet and a hand need this much on each side of the line. */
  private static final double ROOM = 0.2;

  /** Blocking nailed from both sides stands this far off its row's line, at most. */
  private static final double STAGGER = 0.06;

  /** The line is no nearer to an end than this share of the run. */
  private static final double FROM_END = 0.25;

  /** Blocking is high enough to close pans' heads when it is this share of the joists' depth. */
  private static final double DEEP = 0.75;

  /** Places nearer than this are one. */
  private static final double SAME = 1e-9;

  private final FieldBays whole;
  private final Interval run;

  private BothWays(FieldBays whole) {
    this.whole = whole;
    this.run =
        new Interval(
            whole.bays().stream().mapToDouble(b -> b.stretch().from()).min().orElse(0),
            whole.bays().stream().mapToDouble(b -> b.stretch().to()).max().orElse(0));
  }

  /**
   * Both halves, first the one that falls as the whole field did.
   *
   * @param otherId name of the second half
   * @return empty when something stands wherever the line could be
   */
  public static Optional<List<FieldBays>> of(FieldBays whole, String otherId) {
    BothWays ways = new BothWays(whole);
    OptionalDouble line = ways.line();
    return line.isPresent()
        ? Optional.of(ways.halves(line.getAsDouble(), otherId))
        : Optional.empty();
  }

  /**
   * Whether a field's high end is at no house: no ledger bounds it, and no field that falls from
   * the house ends there.
   *
   * @param others fields of the same deck
   */
  public static boolean standsFree(Field field, List<Field> others) {
    List<Member> high = field.high().stream().map(Support::member).toList();
    return field.highLine().isEmpty()
        && field.supports(Role.LEDGER).isEmpty()
        && others.stream()
            .filter(o -> !o.equals(field))
            .flatMap(o -> Stream.concat(o.low().stream(), o.dropBeams().stream()))
            .map(Support::member)
            .noneMatch(high::contains);
  }

  /** The station nearest to the middle at which the line can be. */
  private OptionalDouble line() {
    double middle = run.middle();
    double most = run.length() * (0.5 - FROM_END);
    DoubleStream beside =
        whole.bays().stream()
            .flatMap(b -> standing(b).stream())
            .flatMapToDouble(
                s -> DoubleStream.of(s.from() - ROOM, s.to() + ROOM, s.middle(), rowAt(s)));
    return DoubleStream.concat(DoubleStream.of(middle), beside)
        .filter(v -> Math.abs(v - middle) <= most)
        .filter(this::isFree)
        .boxed()
        .min(Comparator.comparingDouble((Double v) -> Math.abs(v - middle)).thenComparing(v -> v))
        .map(OptionalDouble::of)
        .orElse(OptionalDouble.empty());
  }

  /** The middle of the row of things that stand about as far along as one does. */
  private double rowAt(Interval one) {
    double[] row =
        whole.bays().stream()
            .flatMap(b -> standing(b).stream())
            .mapToDouble(Interval::middle)
            .filter(v -> Math.abs(v - one.middle()) <= 2 * STAGGER)
            .sorted()
            .toArray();
    return (row[0] + row[row.length - 1]) / 2;
  }

  /** What stands in a bay, as stations; what runs along it is everywhere. */
  private static List<Interval> standing(Bay bay) {
    return Stream.concat(
            Stream.concat(bay.blocking().stream(), bay.bridging().stream()).map(Block::stretch),
            bay.crossings().stream().filter(c -> c.way() != Way.ALONG).map(Crossing::stretch))
        .toList();
  }

  /** Bays that run across a station. */
  private Stream<Bay> crossed(double v) {
    return whole.bays().stream().filter(b -> b.stretch().contains(v));
  }

  private boolean isFree(double v) {
    double[] row =
        crossed(v)
            .flatMap(b -> closing(b, v).stream())
            .mapToDouble(c -> c.stretch().middle())
            .sorted()
            .toArray();
    boolean centred = row.length == 0 || Math.abs((row[0] + row[row.length - 1]) / 2 - v) < SAME;
    return centred && crossed(v).allMatch(b -> hasRoom(b, v));
  }

  private static boolean hasRoom(Bay bay, double v) {
    Optional<Block> closing = closing(bay, v);
    return standing(bay).stream()
        .filter(s -> closing.filter(c -> c.stretch().equals(s)).isEmpty())
        .allMatch(s -> s.distance(v) >= ROOM - SAME);
  }

  /** Blocking on the line that closes the bay there. */
  static Optional<Block> closing(Bay bay, double v) {
    return bay.blocking().stream()
        .filter(b -> Math.abs(b.stretch().middle() - v) <= STAGGER)
        .filter(b -> b.heights().length() >= DEEP * (bay.joistTop(v) - bay.joistBottom(v)))
        .findFirst();
  }

  private List<FieldBays> halves(double line, String otherId) {
    List<Member> atLine =
        crossed(line).flatMap(b -> closing(b, line).stream()).map(Block::member).toList();
    List<Field> fields = FieldHalves.of(whole.field(), line, atLine, otherId);
    List<FieldBays> halves = new ArrayList<>();
    for (int i = 0; i < fields.size(); i++) {
      halves.add(new HalfBays(whole.field(), fields.get(i), i == 0).of(bays(i == 0), line));
    }
    return halves;
  }

  private List<Bay> bays(boolean onward) {
    List<Bay> bays = new ArrayList<>(whole.bays());
    if (!onward) {
      Collections.reverse(bays);
    }
    return bays;
  }
}
