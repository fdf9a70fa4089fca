package org.underlee.check;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.bay.FieldBays;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.Kit;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;

/** The assembly of a field with its parts where a model has them. */
final class AsItStands {
  private AsItStands() {}

  static Assembled of(FieldLayout meant, FieldBays bays, Kit kit, Map<String, Mesh> shapes) {
    Transform frame = bays.field().frame();
    List<Part> parts =
        meant.parts().stream()
            .filter(p -> p.bodies().isEmpty() || shapes.containsKey(p.id()))
            .toList();
    List<Placed> placed =
        parts.stream()
            .filter(p -> !p.bodies().isEmpty())
            .map(p -> Placed.of(p, shape(p, shapes), frame))
            .toList();
    return Assembled.of(now(meant, parts, fall(meant, parts, shapes, frame)), bays, kit, placed);
  }

  private static Mesh shape(Part part, Map<String, Mesh> shapes) {
    return Objects.requireNonNull(shapes.get(part.id()));
  }

  /** The least fall of what catches water: one piece set level makes its bay stand. */
  private static double fall(
      FieldLayout meant, List<Part> parts, Map<String, Mesh> shapes, Transform frame) {
    return parts.stream()
        .filter(p -> p.kind().catchesWater() && !p.bodies().isEmpty())
        .mapToDouble(p -> fall(shape(p, shapes), frame))
        .min()
        .orElse(meant.fall());
  }

  /** Drop over run, down the field's fall, of the largest triangle that looks up. */
  static double fall(Mesh mesh, Transform frame) {
    double largest = 0;
    double fall = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 a = frame.toLocal(mesh.point(t, 0));
      Vec3 n =
          frame.toLocal(mesh.point(t, 1)).minus(a).cross(frame.toLocal(mesh.point(t, 2)).minus(a));
      if (n.z() > largest) {
        largest = n.z();
        fall = n.y() / n.z();
      }
    }
    return fall;
  }

  private static FieldLayout now(FieldLayout meant, List<Part> parts, double fall) {
    Set<String> there = parts.stream().map(Part::id).collect(Collectors.toSet());
    return new FieldLayout(
        meant.deck(),
        meant.field(),
        meant.storey(),
        meant.seatHigh(),
        fall,
        meant.run(),
        meant.lowEnd(),
        meant.binding(),
        meant.bays(),
        parts,
        meant.links().stream()
            .filter(l -> there.contains(l.from()) && there.contains(l.to()))
            .toList(),
        Optional.empty());
  }
}
