package org.underlee.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Role;
import org.underlee.geom.Box;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Triangulation;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.Family;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.run.Design;

/**
 * Tells which parts of a design stand in the framing, in what crosses it, or in another part.
 * Judged by places picked at random inside each part's bodies: whether one lies in a mesh is told
 * by counting how often a ray leaves it, which shares nothing with how parts are laid out.
 */
public final class PartsFit {
  private static final int PLACES = 60;

  /** Faces touch: a place counts as inside only when it is this far from the body's surface. */
  private static final double SKIN = 2e-4;

  private PartsFit() {}

  /** What meets what: {@code part in element}; empty for a design that fits. */
  public static List<String> meetings(Design design) {
    List<BuildingElement> elements = design.survey().model().elements();
    List<Solid> solids = new ArrayList<>();
    // rails and pans lie over the sheet of joist hangers, which is thinner than their side gap;
    // boards are laid over membranes
    Set<Role> givesWay =
        design.layout().kit().family() == Family.DRAPE
            ? Set.of(Role.HANGER, Role.DECK_BOARD)
            : Set.of(Role.HANGER);
    Set<Long> hangers =
        design.survey().framing().roles().stream()
            .filter(r -> givesWay.contains(r.role()))
            .map(r -> r.member().element().instance())
            .collect(Collectors.toSet());
    elements.stream()
        .filter(e -> !hangers.contains(e.instance()))
        .forEach(e -> solids.add(Solid.of(e.name() + " #" + e.instance(), e.shape())));
    List<Part> parts = design.layout().parts();
    parts.forEach(p -> p.bodies().forEach(b -> solids.add(Solid.of(p.id(), b.mesh()))));
    List<String> met = new ArrayList<>();
    Random random = new Random(7);
    for (Part part : parts) {
      for (Extrusion body : part.bodies()) {
        for (Vec3 place : places(body, random)) {
          solids.stream()
              .filter(s -> !s.name.equals(part.id()) && s.holds(place))
              .forEach(s -> met.add(part.id() + " in " + s.name));
        }
      }
    }
    return met.stream().distinct().toList();
  }

  /** Bays with no pan that no finding names, and bays whose pan does not end over a gutter. */
  public static List<String> forgotten(Design design) {
    List<Part> parts = design.layout().parts();
    List<String> forgotten = new ArrayList<>();
    for (FieldBays field : design.survey().bays()) {
      Transform frame = field.field().frame();
      List<Box> gutters =
          parts.stream()
              .filter(p -> p.kind() == PartKind.GUTTER && p.field().equals(field.field().id()))
              .map(p -> local(p, frame))
              .toList();
      // what is no outside deck is left out as a whole, and said so
      List<Bay> bays =
          design.findings().stream()
                  .anyMatch(f -> f.message().startsWith(deck(field) + " is left out"))
              ? List.of()
              : field.bays();
      for (Bay bay : bays) {
        String name = field.field().id() + " " + bay.id();
        List<Box> pans = pans(parts, field.field().id(), bay, frame);
        double end = pans.stream().mapToDouble(b -> b.max().y()).max().orElse(0);
        if (pans.isEmpty() && design.findings().stream().noneMatch(f -> names(f, field, bay))) {
          forgotten.add(name + " has no pan and no finding");
        } else if (!pans.isEmpty()
            && gutters.stream().noneMatch(g -> end > g.min().y() && end < g.max().y())) {
          forgotten.add(name + " ends at " + end + " over none of " + gutters);
        }
      }
    }
    return forgotten;
  }

  private static String deck(FieldBays field) {
    return field.field().id().replaceFirst("/.*", "");
  }

  private static boolean names(Finding finding, FieldBays field, Bay bay) {
    return finding.subjects().stream()
        .anyMatch(s -> s.group().equals(field.field().id()) && s.name().equals(bay.id()));
  }

  private static List<Box> pans(List<Part> parts, String field, Bay bay, Transform frame) {
    double v = bay.stretch().middle();
    double middle = (bay.left().centre(v) + bay.right().centre(v)) / 2;
    return parts.stream()
        .filter(p -> p.kind().catchesWater() && p.field().equals(field))
        .filter(p -> p.bay().isEmpty() || p.bay().filter(bay.id()::equals).isPresent())
        .map(p -> local(p, frame))
        .filter(b -> b.min().x() <= middle && b.max().x() >= middle)
        .toList();
  }

  private static Box local(Part part, Transform frame) {
    Mesh mesh = part.mesh();
    Box box = Box.EMPTY;
    for (int i = 0; i < mesh.vertexCount(); i++) {
      box = box.with(frame.toLocal(mesh.vertex(i)));
    }
    return box;
  }

  /** Places inside a body, spread over its section however thin its walls are. */
  private static List<Vec3> places(Extrusion body, Random random) {
    Triangulation section = Triangulation.of(body.section());
    List<Vec3> places = new ArrayList<>();
    for (int i = 0; i < PLACES; i++) {
      int[] t = section.triangles().get(random.nextInt(section.triangles().size()));
      double a = random.nextDouble();
      double b = random.nextDouble();
      double low = Math.min(a, b);
      double high = Math.max(a, b);
      Vec2 p =
          section
              .points()
              .get(t[0])
              .times(low)
              .plus(section.points().get(t[1]).times(high - low))
              .plus(section.points().get(t[2]).times(1 - high));
      Vec3 swept = body.sweep().times(random.nextDouble());
      places.add(body.frame().apply(new Vec3(p.x(), p.y(), 0).plus(swept)));
    }
    return places;
  }

  private record Solid(String name, Mesh mesh, Box bounds) {
    /** A slanted way, so that rays seldom graze edges. */
    private static final Vec3 WAY = new Vec3(0.2345, 0.6789, 0.9173).unit();

    static Solid of(String name, Mesh mesh) {
      return new Solid(name, mesh, mesh.bounds());
    }

    /** Inside at the place and at six places a skin away from it. */
    boolean holds(Vec3 p) {
      return bounds.meets(new Box(p, p))
          && contains(p)
          && Stream.of(Vec3.X, Vec3.Y, Vec3.Z)
              .flatMap(d -> Stream.of(d.times(SKIN), d.times(-SKIN)))
              .allMatch(d -> contains(p.plus(d)));
    }

    private boolean contains(Vec3 p) {
      Transform ray = Transform.frame(p, WAY, Vec3.X);
      int crossings = 0;
      for (int t = 0; t < mesh.triangleCount(); t++) {
        Vec3 a = ray.toLocal(mesh.point(t, 0));
        Vec3 b = ray.toLocal(mesh.point(t, 1));
        Vec3 c = ray.toLocal(mesh.point(t, 2));
        double ab = a.x() * b.y() - a.y() * b.x();
        double bc = b.x() * c.y() - b.y() * c.x();
        double ca = c.x() * a.y() - c.y() * a.x();
        boolean around = (ab > 0 && bc > 0 && ca > 0) || (ab < 0 && bc < 0 && ca < 0);
        double height = (bc * a.z() + ca * b.z() + ab * c.z()) / (ab + bc + ca);
        crossings += around && height > 0 ? 1 : 0;
      }
      return crossings % 2 == 1;
    }
  }
}
