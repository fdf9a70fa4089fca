package org.underlee.framing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.underlee.geom.Interval;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * Parts a field at a line across its joists, so that each half falls away from it. Every member
 * stays as it is; joist lines keep their names and are cut at the line. Members that stand at the
 * line itself bound the high end of both halves.
 */
public final class FieldHalves {
  private static final String WHY =
      "away from a high line inside the joists, as you asked: the field falls both ways";

  private final Field whole;
  private final double station;
  private final boolean asked;
  private final List<Member> atLine;

  private FieldHalves(Field whole, double station, boolean asked, List<Member> atLine) {
    this.whole = whole;
    this.station = station;
    this.asked = asked;
    this.atLine = List.copyOf(atLine);
  }

  /**
   * Both halves: first the one that falls as the whole field did, under its name.
   *
   * @param station of the line, in the field's frame
   * @param asked whether the user put it there
   * @param atLine blocking that stands there
   * @param otherId name of the second half
   */
  public static List<Field> of(
      Field whole, double station, boolean asked, List<Member> atLine, String otherId) {
    FieldHalves halves = new FieldHalves(whole, station, asked, atLine);
    return List.of(halves.onward(otherId), halves.backward(otherId));
  }

  private Field onward(String otherId) {
    JoistLine first = whole.lines().get(0);
    Transform frame = whole.frame();
    Transform own = at(frame, first.left().at(station), frame.x(), frame.y());
    HighLine line = new HighLine(otherId, true, station, asked);
    return half(whole.id(), line, own, whole.lines(), whole.high(), whole.low());
  }

  private Field backward(String otherId) {
    List<JoistLine> lines = new ArrayList<>(whole.lines());
    Collections.reverse(lines);
    Transform frame = whole.frame();
    Transform own =
        at(frame, lines.get(0).right().at(station), frame.x().negated(), frame.y().negated());
    HighLine line = new HighLine(whole.id(), false, station, asked);
    return half(otherId, line, own, lines, whole.low(), whole.high());
  }

  private Transform at(Transform frame, double u, Vec3 x, Vec3 y) {
    double[] bottoms =
        whole.lines().stream()
            .filter(l -> l.stretch().contains(station))
            .mapToDouble(l -> l.bottomAt(station))
            .sorted()
            .toArray();
    Vec3 origin = frame.apply(new Vec3(u, station, bottoms[bottoms.length / 2]));
    return new Transform(origin, x, y, frame.z());
  }

  private Field half(
      String id,
      HighLine line,
      Transform frame,
      List<JoistLine> lines,
      List<Support> behind,
      List<Support> before) {
    List<Support> high = new ArrayList<>(beyond(behind, frame));
    atLine.forEach(
        m -> high.add(new Support(m, Role.BLOCKING, shape(m, frame), "stands at the high line")));
    return new Field(
        id,
        frame,
        lines.stream().flatMap(l -> beyond(l, frame).stream()).toList(),
        high,
        beyond(before, frame),
        seen(whole.dropBeams(), frame, s -> s.shape().along().to() > 0),
        seen(whole.carriers(), frame, s -> true),
        members(whole.posts(), frame, s -> s.along().to() > 0),
        members(whole.blocking(), frame, s -> s.along().middle() > 0).stream()
            .filter(m -> !atLine.contains(m))
            .toList(),
        whole.storey(),
        WHY,
        false,
        Optional.of(line));
  }

  private static List<Support> beyond(List<Support> supports, Transform frame) {
    return seen(supports, frame, s -> s.shape().along().middle() > 0);
  }

  private static List<Support> seen(
      List<Support> supports, Transform frame, Predicate<Support> kept) {
    return supports.stream()
        .map(s -> new Support(s.member(), s.role(), shape(s.member(), frame), s.why()))
        .filter(kept)
        .toList();
  }

  private static List<Member> members(
      List<Member> members, Transform frame, Predicate<PlanShape> kept) {
    return members.stream().filter(m -> kept.test(shape(m, frame))).toList();
  }

  private static PlanShape shape(Member member, Transform frame) {
    return PlanShape.of(member.element().shape(), frame);
  }

  /** What of a line lies beyond the high line, which is station 0 of the frame. */
  private static Optional<JoistLine> beyond(JoistLine line, Transform frame) {
    JoistLine turned = JoistLines.seen(line, frame);
    Interval left = turned.stretch().meet(new Interval(0, Double.POSITIVE_INFINITY));
    return left.length() > JoistLine.END_STEP ? Optional.of(turned.within(left)) : Optional.empty();
  }
}
