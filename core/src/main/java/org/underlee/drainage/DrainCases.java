package org.underlee.drainage;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.bay.Block;
import org.underlee.bay.FieldBays;
import org.underlee.drainage.Piece.Kind;
import org.underlee.framing.Field;
import org.underlee.framing.Member;
import org.underlee.framing.Role;
import org.underlee.framing.Support;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.layout.Layout;
import org.underlee.layout.Onto;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;

/** Makes the cases to be proved, from what was recognised and the parts that are there. */
public final class DrainCases {
  private static final Map<PartKind, Kind> FITTINGS =
      Map.of(
          PartKind.GUTTER, Kind.GUTTER,
          PartKind.OUTLET, Kind.OUTLET,
          PartKind.DOWNSPOUT, Kind.PIPE,
          PartKind.ELBOW, Kind.PIPE);

  private DrainCases() {}

  /** What sheds to both its sides, as joists do. */
  private static final Set<PartKind> SHEDS = Set.of(PartKind.CAP_STRIP, PartKind.BATTEN);

  /** A part of an assembly, wherever it was read. */
  public record Placed(String id, PartKind kind, org.underlee.geom.Mesh shape) {}

  /** One case for each field of the layout. */
  public static List<DrainCase> of(List<FieldBays> bays, Layout layout) {
    Map<String, List<Placed>> parts = new LinkedHashMap<>();
    for (var field : layout.fields()) {
      parts.put(
          field.field(),
          field.parts().stream()
              .filter(p -> !p.bodies().isEmpty())
              .map(DrainCases::placed)
              .toList());
    }
    return ofParts(bays, parts);
  }

  /**
   * One case for each field with parts. What hangs on the other side of a field's high line is in
   * its case too, as what lies over the line sheds to both sides.
   *
   * @param parts by the field that they hang below
   */
  public static List<DrainCase> ofParts(List<FieldBays> bays, Map<String, List<Placed>> parts) {
    List<DrainCase> cases = new ArrayList<>();
    parts.forEach(
        (field, own) ->
            bays.stream()
                .filter(b -> b.field().id().equals(field))
                .forEach(b -> cases.add(of(b, b.beyond(bays), own, parts))));
    return cases;
  }

  private static DrainCase of(
      FieldBays bays,
      Optional<FieldBays> other,
      List<Placed> own,
      Map<String, List<Placed>> parts) {
    List<FieldBays> both = new ArrayList<>(List.of(bays));
    other.ifPresent(both::add);
    List<Placed> beyond =
        other.map(o -> parts.getOrDefault(o.field().id(), List.of())).orElse(List.of());
    return of(bays, both.stream().flatMap(DrainCases::framing), own, beyond);
  }

  /** The same with rain that comes onto the fields from elsewhere. */
  public static List<DrainCase> of(List<FieldBays> bays, Layout layout, List<Onto> onto) {
    return of(bays, layout).stream().map(c -> c.with(onto)).toList();
  }

  private static Placed placed(Part part) {
    return new Placed(part.id(), part.kind(), part.mesh());
  }

  /** The case for one field, with the parts that are hung there. */
  public static DrainCase of(FieldBays bays, List<Placed> parts) {
    return of(bays, framing(bays), parts, List.of());
  }

  private static DrainCase of(
      FieldBays bays, Stream<Member> framing, List<Placed> own, List<Placed> beyond) {
    Field field = bays.field();
    List<Piece> pieces = new ArrayList<>();
    Stream.of(own, beyond)
        .flatMap(List::stream)
        .forEach(p -> kind(p.kind()).ifPresent(k -> pieces.add(piece(p, k))));
    framing
        .distinct()
        .forEach(m -> pieces.add(new Piece(m.id(), Kind.JOIST, m.element().shape(), false)));
    return new DrainCase(
        field.id(),
        downTheFall(field.frame()),
        bays.bays().stream().map(DrainCases::catchment).toList(),
        pieces,
        ground(field),
        List.of(),
        beyond.stream().map(Placed::id).collect(Collectors.toSet()));
  }

  /** The kit's collars are sealed around their pipes once they are fitted. */
  private static Piece piece(Placed part, Kind kind) {
    return new Piece(part.id(), kind, part.shape(), part.kind() == PartKind.COLLAR_PIECE);
  }

  /** Tape is a second line; straps and fasteners hold no water; all else is sheet or pipe. */
  private static Optional<Kind> kind(PartKind kind) {
    if (kind == PartKind.TAPE
        || kind == PartKind.STRAP
        || kind == PartKind.BATTEN_HANGER
        || kind == PartKind.FASTENER) {
      return Optional.empty();
    }
    return Optional.of(SHEDS.contains(kind) ? Kind.JOIST : FITTINGS.getOrDefault(kind, Kind.SHEET));
  }

  /** Joists, what bounds and carries them, posts, and what stands between them. */
  private static Stream<Member> framing(FieldBays bays) {
    Field field = bays.field();
    Stream<Member> joists = field.lines().stream().flatMap(l -> l.plies().stream());
    Stream<Member> ends =
        Stream.of(field.high(), field.low(), field.dropBeams())
            .flatMap(List::stream)
            .map(Support::member);
    Stream<Member> blocks =
        bays.bays().stream().flatMap(b -> b.blocking().stream()).map(Block::member);
    return Stream.of(joists, ends, field.posts().stream(), blocks).flatMap(s -> s);
  }

  private static Catchment catchment(Bay bay) {
    double from = highEnd(bay);
    double to = bay.stretch().to();
    return new Catchment(
        bay.id(),
        List.of(
            new Vec2(from, -bay.left().centre(from)),
            new Vec2(from, -bay.right().centre(from)),
            new Vec2(to, -bay.right().centre(to)),
            new Vec2(to, -bay.left().centre(to))));
  }

  /** Blocking at a high line sheds half of its rain to each side. */
  private static double highEnd(Bay bay) {
    return bay.high()
        .filter(h -> h.role() == Role.BLOCKING)
        .map(h -> h.shape().along().middle())
        .orElse(bay.stretch().from());
  }

  private static Transform downTheFall(Transform f) {
    return new Transform(f.origin(), f.y(), f.x().negated(), f.z());
  }

  /** The posts' feet: the middle one. */
  private static OptionalDouble ground(Field field) {
    double[] feet =
        field.posts().stream().map(Member::box).mapToDouble(b -> b.bottom()).sorted().toArray();
    return feet.length == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(feet[feet.length / 2] - field.frame().origin().z());
  }
}
