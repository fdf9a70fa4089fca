package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Triangulation;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.kit.KitReader;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;

/**
 * No part of ours stands in the framing, in what crosses it, or in another part. Judged by places
 * picked at random inside each part's bodies: whether one lies in a mesh is told by counting how
 * often a ray leaves it, which shares nothing with how parts are laid out.
 */
class PartsFitTest {
  private static final int PLACES = 60;

  /** Faces touch: a place counts as inside only when it is this far from the body's surface. */
  private static final double SKIN = 2e-4;

  static Stream<SampleDeck> decks() {
    return Stream.concat(
        SampleDecks.all().stream(),
        Stream.concat(
            Stream.of(SampleDecks.twoSpans(2400, 1800, 7), SampleDecks.plain(2438.4, 406.4, 5)),
            LongStream.rangeClosed(1, 25).mapToObj(SampleDecks::random)));
  }

  @ParameterizedTest
  @MethodSource("decks")
  void noPartStandsInAnythingElse(SampleDeck deck) {
    Design design =
        DeckRun.design(
            DeckRun.survey(IfcEmitter.emit(deck, Mix.PLAIN), "deck.ifc"),
            Scope.OUTSIDE,
            KitReader.builtIn());
    List<BuildingElement> elements = design.survey().model().elements();
    List<Solid> solids = new ArrayList<>();
    elements.forEach(e -> solids.add(Solid.of(e.name() + " #" + e.instance(), e.shape())));
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
    assertThat(met.stream().distinct()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("decks")
  void everyBayIsServedOrNamedInAFindingAndEveryPanEndsOverTheGutter(SampleDeck deck) {
    Design design =
        DeckRun.design(
            DeckRun.survey(IfcEmitter.emit(deck, Mix.PLAIN), "deck.ifc"),
            Scope.OUTSIDE,
            KitReader.builtIn());
    List<Part> parts = design.layout().parts();
    for (FieldBays field : design.survey().bays()) {
      Transform frame = field.field().frame();
      List<Box> gutters =
          parts.stream()
              .filter(p -> p.kind() == PartKind.GUTTER && p.field().equals(field.field().id()))
              .map(p -> local(p, frame))
              .toList();
      for (Bay bay : field.bays()) {
        List<Box> pans =
            parts.stream()
                .filter(p -> p.kind() == PartKind.PAN || p.kind() == PartKind.COLLAR_PIECE)
                .filter(p -> p.field().equals(field.field().id()))
                .filter(p -> p.bay().filter(bay.id()::equals).isPresent())
                .map(p -> local(p, frame))
                .toList();
        String name = field.field().id() + " " + bay.id();
        assertThat(
                !pans.isEmpty()
                    || design.findings().stream()
                        .anyMatch(
                            f ->
                                f.message().contains(name + " ")
                                    || f.message().contains(name + ":")))
            .as(name)
            .isTrue();
        double end = pans.stream().mapToDouble(b -> b.max().y()).max().orElse(0);
        assertThat(
                pans.isEmpty()
                    || gutters.stream().anyMatch(g -> end > g.min().y() && end < g.max().y()))
            .as("%s ends at %s over %s", name, end, gutters)
            .isTrue();
      }
    }
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
