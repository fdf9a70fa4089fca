package org.underlee.clash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Bodies;
import org.underlee.geom.Bvhs;
import org.underlee.geom.Mesh;
import org.underlee.geom.SlowTriangles;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

class ContactTestTest {
  private static final int SCENES = 500;
  private static final double TOLERANCE = 0.001;
  private static final double CLEARANCE = 0.025;
  private static final ContactTest TEST = new ContactTest(TOLERANCE, CLEARANCE);

  private record Scene(String what, Mesh a, Mesh b) {}

  private static Mesh at(Mesh mesh, double x, double y, double z) {
    return mesh.transformed(Transform.translation(new Vec3(x, y, z)));
  }

  /** Eight kinds of scene in turn, turned and moved: every fourth far from the origin. */
  private static Scene scene(int seed) {
    Random random = new Random(seed);
    double size = 0.05 + random.nextDouble();
    double shift = (random.nextDouble() - 0.5) * 2 * size;
    Mesh box = Bodies.box(size, 0.3, 0.2);
    Mesh pipe = Bodies.pipe(0.1, 0, 1 + size, 8 + random.nextInt(9));
    Mesh other = Bodies.box(0.1, size, 0.15);
    Scene local =
        switch (seed % 8) {
          case 0 -> new Scene("coaxial", pipe, at(Bodies.pipe(0.1, 0, 1, 12), 0, 0, shift));
          case 1 -> new Scene("touching", box, at(other, size / 2 + 0.05, shift / 4, 0));
          case 2 -> new Scene("nested", Bodies.box(2, 2, 2), at(pipe, shift / 9, 0, 0));
          case 3 -> new Scene("coplanar", box, at(Bodies.box(size, 0.1, 0.2), shift, shift / 3, 0));
          case 4 -> new Scene("flat triangles", withFlat(box), at(withFlat(other), shift, 0, 0));
          case 5 -> new Scene("any", box, other.transformed(Bodies.frame(random, 0.3)));
          case 6 -> new Scene("hollow", Bodies.pipe(0.2, 0.18, 1, 12), at(other, shift, 0, shift));
          default -> new Scene("angle", Bodies.angle(0.3, 0.02, 1), at(pipe, shift, 0.1, 0));
        };
    Transform world = Bodies.frame(random, seed % 4 == 0 ? 4_000_000 : 20);
    return seed % 3 == 0
        ? local
        : new Scene(local.what, local.a.transformed(world), local.b.transformed(world));
  }

  /** The same surface with a triangle that has no area more. */
  private static Mesh withFlat(Mesh m) {
    double[] xyz = new double[3 * m.vertexCount()];
    for (int v = 0; v < m.vertexCount(); v++) {
      xyz[3 * v] = m.vertex(v).x();
      xyz[3 * v + 1] = m.vertex(v).y();
      xyz[3 * v + 2] = m.vertex(v).z();
    }
    int[] corners = new int[3 * m.triangleCount() + 3];
    for (int t = 0; t < m.triangleCount(); t++) {
      for (int i = 0; i < 3; i++) {
        corners[3 * t + i] = m.corner(t, i);
      }
    }
    int last = 3 * m.triangleCount();
    corners[last] = m.corner(0, 0);
    corners[last + 1] = m.corner(0, 1);
    corners[last + 2] = m.corner(0, 0);
    return new Mesh(xyz, corners);
  }

  @Test
  void theTreeFindsThePairsOfTryingAllInFiveHundredScenes() {
    Map<ClashKind, Integer> kinds = new EnumMap<>(ClashKind.class);
    int apart = 0;
    for (int seed = 0; seed < SCENES; seed++) {
      Scene s = scene(seed);
      assertThat(Bvhs.pairs(s.a, s.b))
          .as("%s, seed %s", s.what, seed)
          .isEqualTo(SlowTriangles.meeting(s.a, s.b));
      Optional<Contact> contact = TEST.of(Solid.of(s.a), Solid.of(s.b));
      contact.ifPresent(c -> kinds.merge(c.kind(), 1, Integer::sum));
      apart += contact.isEmpty() ? 1 : 0;
    }
    assertThat(kinds.get(ClashKind.INTERSECT)).isGreaterThan(200);
    assertThat(kinds.get(ClashKind.TOUCH)).isGreaterThan(40);
    assertThat(apart).isGreaterThan(20);
  }

  @Test
  void aMeasuredDepthIsTheLeastMoveThatParts() {
    int tried = 0;
    for (int seed = 0; seed < SCENES; seed++) {
      Scene s = scene(seed);
      Solid a = Solid.of(s.a);
      Optional<Contact> contact = TEST.of(a, Solid.of(s.b));
      if (contact.filter(c -> c.measured() && c.kind() == ClashKind.INTERSECT).isPresent()) {
        tried++;
        double depth = contact.get().depth();
        String name = s.what + ", seed " + seed;
        Separation move = Separation.of(s.a, s.b);
        assertThat(stillMeets(a, s.b, move.by().times(1 + 1e-6 / depth))).as(name).isFalse();
        Random random = new Random(seed);
        for (int i = 0; i < 12; i++) {
          Vec3 any =
              new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
          assertThat(stillMeets(a, s.b, any.times(depth * 0.99 - 1e-6))).as(name).isTrue();
        }
        assertThat(stillMeets(a, s.b, move.by().times(0.99 - 1e-6 / depth))).as(name).isTrue();
      }
    }
    assertThat(tried).isGreaterThan(150);
  }

  private static boolean stillMeets(Solid a, Mesh b, Vec3 by) {
    Solid moved = Solid.of(b.transformed(Transform.translation(by)));
    return a.tree().meets(moved.tree())
        || a.holds(moved.mesh().vertex(0))
        || moved.holds(a.mesh().vertex(0));
  }

  @Test
  void whatIsFoundIsTheSameWithSidesSwappedAndAfterARigidMotion() {
    for (int seed = 0; seed < SCENES; seed += 2) {
      Scene s = scene(seed);
      Optional<Contact> here = TEST.of(Solid.of(s.a), Solid.of(s.b));
      Transform turn = Bodies.frame(new Random(seed + 1), 50);
      List<Optional<Contact>> others = new ArrayList<>();
      others.add(TEST.of(Solid.of(s.b), Solid.of(s.a)));
      if (s.a.bounds().max().length() < 1000) {
        others.add(TEST.of(Solid.of(s.a.transformed(turn)), Solid.of(s.b.transformed(turn))));
      }
      for (Optional<Contact> other : others) {
        String name = s.what + ", seed " + seed;
        assertThat(other.map(Contact::kind)).as(name).isEqualTo(here.map(Contact::kind));
        here.ifPresent(
            h -> {
              assertThat(other.get().measured()).as(name).isEqualTo(h.measured());
              if (h.measured()) {
                assertThat(other.get().depth()).as(name).isCloseTo(h.depth(), within(1e-6));
                assertThat(other.get().distance()).as(name).isCloseTo(h.distance(), within(1e-6));
              }
            });
      }
    }
  }

  private static Contact contact(Mesh a, Mesh b) {
    return TEST.of(Solid.of(a), Solid.of(b)).orElseThrow();
  }

  @Test
  void depthsAndDistancesOfBoxesAreThoseOfTheirMeasures() {
    Mesh cube = Bodies.box(1, 1, 1);
    Contact deep = contact(cube, at(cube, 0.9, 0.2, 0.1));
    assertThat(deep.kind()).isEqualTo(ClashKind.INTERSECT);
    assertThat(deep.measured()).isTrue();
    assertThat(deep.depth()).isCloseTo(0.1, within(1e-12));
    assertThat(contact(cube, at(cube, 0.9995, 0.2, 0.1)).kind()).isEqualTo(ClashKind.TOUCH);
    assertThat(contact(cube, at(cube, 1, 0.2, 0.1)).kind()).isEqualTo(ClashKind.TOUCH);
    Contact gap = contact(cube, at(cube, 1.02, 0.2, 0.1));
    assertThat(gap.kind()).isEqualTo(ClashKind.GAP);
    assertThat(gap.distance()).isCloseTo(0.02, within(1e-12));
    assertThat(TEST.of(Solid.of(cube), Solid.of(at(cube, 1.025, 0, 0)))).isEmpty();
    assertThat(contact(cube, cube).kind()).isEqualTo(ClashKind.DUPLICATE);
  }

  @Test
  void aCoaxialPipeInsideAnotherIsFound() {
    Contact nested = contact(Bodies.pipe(0.1, 0, 2, 24), Bodies.pipe(0.08, 0, 1, 24));
    assertThat(nested.kind()).isEqualTo(ClashKind.INTERSECT);
    Contact same = contact(Bodies.pipe(0.1, 0, 2, 24), at(Bodies.pipe(0.1, 0, 2, 24), 0, 0, 1.9));
    assertThat(same.kind()).isEqualTo(ClashKind.INTERSECT);
    assertThat(same.depth()).isCloseTo(0.1, within(0.002)); // across is as short as along
  }

  /** 0.7 mm thick: thinner than any tolerance, and no contact. */
  @Test
  void aThinSheetThatAHollowPipeGoesThroughIsNoContact() {
    Mesh sheet = Bodies.box(0.4, 2, 0.0007);
    Contact through = contact(sheet, Bodies.pipe(0.05, 0.045, 1, 16));
    assertThat(through.kind()).isEqualTo(ClashKind.INTERSECT);
    assertThat(through.measured()).isFalse();
    assertThat(through.depth()).isGreaterThan(0.05);
  }

  /** An angle that bears on two sides of a post, drawn half a millimetre into it. */
  @Test
  void twoLegsThatBearOnABodyAreContact() {
    Mesh post = at(Bodies.box(0.1, 0.1, 2), 0.02 + 0.05 - 0.0005, 0.02 + 0.05 - 0.0005, 0);
    Contact bearing = contact(Bodies.angle(0.08, 0.02, 1), post);
    assertThat(bearing.kind()).isEqualTo(ClashKind.TOUCH);
    assertThat(bearing.depth()).isLessThanOrEqualTo(0.0005 + 1e-9);
  }

  @Test
  void toleranceAndClearanceAreNotConfused() {
    Mesh cube = Bodies.box(1, 1, 1);
    Solid a = Solid.of(cube);
    Solid near = Solid.of(at(cube, 1.01, 0, 0));
    assertThat(new ContactTest(0.05, 0).of(a, near)).isEmpty();
    assertThat(new ContactTest(0, 0.05).of(a, near).orElseThrow().kind()).isEqualTo(ClashKind.GAP);
    Solid into = Solid.of(at(cube, 0.99, 0, 0));
    assertThat(new ContactTest(0.05, 0).of(a, into).orElseThrow().kind())
        .isEqualTo(ClashKind.TOUCH);
    assertThat(new ContactTest(0, 0.05).of(a, into).orElseThrow().kind())
        .isEqualTo(ClashKind.INTERSECT);
  }

  @Test
  void whatIsNoNumberIsRefused() {
    assertThatThrownBy(() -> new ContactTest(Double.NaN, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("NaN");
    assertThatThrownBy(() -> new Mesh(new double[] {0, 0, Double.NaN}, new int[] {0, 0, 0}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("NaN");
  }
}
