package org.underlee.framing;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.underlee.geom.Box;
import org.underlee.geom.Interval;
import org.underlee.geom.PlanShape;
import org.underlee.geom.Transform;

/**
 * Parallel joists between the same supports.
 *
 * @param id {@code deck-1/field-1}
 * @param frame world place of the field's frame: x is u (across the joists, to the right of someone
 *     who looks down the fall), y is v (level, from the high end to the low end), z is up. The
 *     origin is on the left face of the first line, at the face that bounds the high end, at the
 *     joist bottom.
 * @param lines in order of u
 * @param high what bounds the joists at the high end, likewise low
 * @param dropBeams beams that the joists lie on
 * @param carriers beams that carry what holds the joists, and those that carry them in turn
 * @param fallWhy why the water goes this way
 * @param fallAssumed when the model does not say which end is the house side
 * @param highLine where it is one half of a field that falls both ways
 */
public record Field(
    String id,
    Transform frame,
    List<JoistLine> lines,
    List<Support> high,
    List<Support> low,
    List<Support> dropBeams,
    List<Support> carriers,
    List<Member> posts,
    List<Member> blocking,
    Optional<Storey> storey,
    String fallWhy,
    boolean fallAssumed,
    Optional<HighLine> highLine) {
  /** The widest clear gap between neighbours; 24 in on centre is common practice, 0.8 m is rare. */
  public static final double WIDEST_BAY = 0.95;

  public Field withId(String newId) {
    return new Field(
        newId,
        frame,
        lines,
        high,
        low,
        dropBeams,
        carriers,
        posts,
        blocking,
        storey,
        fallWhy,
        fallAssumed,
        highLine);
  }

  /** Whether it falls both ways, and this is the half that has the whole field's name. */
  public boolean isFirstHalf() {
    return highLine.filter(HighLine::first).isPresent();
  }

  /** Members of the given role among what bounds and carries the joists, each once. */
  public List<Member> supports(Role role) {
    return Stream.of(high, low, dropBeams, carriers)
        .flatMap(List::stream)
        .filter(s -> s.role() == role)
        .map(Support::member)
        .distinct()
        .toList();
  }

  /** What a piece between two lines is: blocking, bridging or a packer. */
  public Role roleBetweenLines(Member piece) {
    return Blocking.roleOf(piece, this);
  }

  /** Joists that a header ends on, with the plies beside them. */
  public List<Member> trimmers() {
    List<Member> headers = supports(Role.HEADER);
    return lines.stream()
        .filter(l -> l.plies().stream().anyMatch(j -> headers.stream().anyMatch(h -> endsOn(h, j))))
        .flatMap(l -> l.plies().stream())
        .toList();
  }

  private static boolean endsOn(Member header, Member joist) {
    return Contact.endsOn(header, -1, joist) || Contact.endsOn(header, 1, joist);
  }

  /** Height of the joist tops at the high end, world metres: the middle one of all lines. */
  public double top() {
    double[] tops = lines.stream().mapToDouble(l -> l.top(0)).sorted().toArray();
    return frame.origin().z() + tops[tops.length / 2];
  }

  /** The box around an element in the frame of the field. */
  public Box boxOf(BuildingElement element) {
    Box box = Box.EMPTY;
    for (int i = 0; i < element.shape().vertexCount(); i++) {
      box = box.with(frame.toLocal(element.shape().vertex(i)));
    }
    return box;
  }

  /** What the lines span across the fall. */
  public Interval across() {
    double from = Double.POSITIVE_INFINITY;
    double to = Double.NEGATIVE_INFINITY;
    for (JoistLine line : lines) {
      Interval own = line.stretch();
      from = Math.min(from, Math.min(line.left().at(own.from()), line.left().at(own.to())));
      to = Math.max(to, Math.max(line.right().at(own.from()), line.right().at(own.to())));
    }
    return new Interval(from, to);
  }

  /** What the lines span along the fall. */
  public Interval along() {
    return new Interval(
        lines.stream().mapToDouble(l -> l.stretch().from()).min().orElse(0),
        lines.stream().mapToDouble(l -> l.stretch().to()).max().orElse(0));
  }

  /** Whether its joists are in no file, but assumed. */
  public boolean isAssumed() {
    return lines.get(0).isAssumed();
  }

  /** The world box around the joists. */
  Box bounds() {
    return Box.around(
        lines.stream().flatMap(l -> l.plies().stream()).map(m -> m.box().bounds()).toList());
  }

  public double joistLength() {
    return lines.stream().flatMap(l -> l.plies().stream()).mapToDouble(m -> m.box().length()).sum();
  }

  public PlanShape shapeOf(Member member) {
    return PlanShape.of(member.element().shape(), frame);
  }
}
