package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.geom.Box;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/** What is left of a scene in a box, and its cut faces. */
class SectionBoxTest {
  private static final RasterSettings SMALL = new RasterSettings(96, 72, 2, 1);
  private static final Box HALF = new Box(new Vec3(-9, -9, -9), new Vec3(0.6, 9, 0.4));

  private static Shape shape(int id, Mesh mesh) {
    return new Shape(id, "shape " + id, mesh, Palette.JOIST, true);
  }

  private static Vec3 somewhere(Random random) {
    return new Vec3(
        2 * random.nextDouble() - 1, 2 * random.nextDouble() - 1, 2 * random.nextDouble() - 1);
  }

  private static Transform anyFrame(Random random) {
    return Transform.frame(
        somewhere(random), somewhere(random), somewhere(random).plus(new Vec3(2, 0, 0)));
  }

  /** A tube: its cut faces have holes. */
  private static Mesh tube(Random random) {
    Outline section =
        new Outline(Outline.circle(0, 0, 0.4, 12), List.of(Outline.circle(0, 0, 0.25, 9)));
    return Extrusion.straight(anyFrame(random), section, 0.5 + random.nextDouble()).mesh();
  }

  private static Mesh left(SectionBox box, Mesh mesh) {
    Scene cut = box.cut(Scene.of(List.of(shape(1, mesh))));
    return Mesh.union(cut.shapes().stream().map(Shape::mesh).toList());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void theTwoSidesOfAPlaneAreClosedAndMakeUpTheWhole(long seed) {
    Random random = new Random(seed);
    Mesh whole = tube(random);
    Transform frame = anyFrame(random);
    Vec3 far = new Vec3(9, 9, 9);
    Vec3 middle = frame.toLocal(whole.bounds().centre());
    Box below = new Box(far.negated(), new Vec3(9, 9, middle.z() + 0.05));
    Box above = new Box(new Vec3(-9, -9, middle.z() + 0.05), far);
    Mesh a = left(new SectionBox(frame, below), whole);
    Mesh b = left(new SectionBox(frame, above), whole);
    assertThat(FeatureEdges.of(a).closed()).isTrue();
    assertThat(FeatureEdges.of(b).closed()).isTrue();
    assertThat(a.volume()).isPositive();
    assertThat(b.volume()).isPositive();
    assertThat(a.volume() + b.volume()).isCloseTo(whole.volume(), within(1e-6));
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14, 15, 16})
  void aCornerOfASolidIsCutByThreePlanesAndStaysInTheBox(long seed) {
    Random random = new Random(seed);
    Transform frame = anyFrame(random);
    Mesh solid = Extrusion.straight(frame, Outline.rectangle(0, 0, 2, 1), 3).mesh();
    Box box = new Box(new Vec3(0.25, 0.5, 1), new Vec3(5, 5, 5));
    Mesh left = left(new SectionBox(frame, box), solid);
    assertThat(FeatureEdges.of(left).closed()).isTrue();
    assertThat(left.volume()).isCloseTo(1.75 * 0.5 * 2, within(1e-5));
    for (int i = 0; i < left.vertexCount(); i++) {
      Vec3 p = frame.toLocal(left.vertex(i));
      assertThat(p.minus(new Vec3(0.25, 0.5, 1)).dot(Vec3.X)).isGreaterThan(-2e-6);
      assertThat(p.y()).isGreaterThan(0.5 - 2e-6);
      assertThat(p.z()).isGreaterThan(1 - 2e-6);
    }
  }

  @Test
  void whatIsNotCutStaysTheSameAndWhatIsOutsideIsLeftOut() {
    Shape inside = shape(1, DemoDeck.block(0, 0, 0, 0.5, 0.5, 0.4));
    Shape through = shape(2, DemoDeck.block(0, 1, 0, 1, 2, 0.3));
    Shape outside = shape(3, DemoDeck.block(0.7, 3, 0, 1, 4, 0.3));
    Scene cut =
        new SectionBox(Transform.IDENTITY, HALF).cut(Scene.of(List.of(inside, through, outside)));
    assertThat(cut.shapes().get(0)).isSameAs(inside);
    assertThat(cut.shapes()).extracting(Shape::id).containsExactly(1, 2, 2);
    Shape face = cut.shapes().get(2);
    assertThat(face.paint().rgb() & 255).isLessThan(Palette.JOIST.rgb() & 255);
    assertThat(face.mesh().bounds().min().x()).isCloseTo(0.6, within(1e-9));
    assertThat(face.mesh().bounds().size().y()).isCloseTo(1, within(1e-9));
  }

  @Test
  void anOpenSheetIsCutWithoutACutFace() {
    Mesh sheet = new Mesh(new double[] {0, 0, 0, 2, 0, 0, 0, 2, 0}, new int[] {0, 1, 2});
    Scene cut = new SectionBox(Transform.IDENTITY, HALF).cut(Scene.of(List.of(shape(1, sheet))));
    assertThat(cut.shapes()).hasSize(1);
    assertThat(cut.bounds().max().x()).isCloseTo(0.6, within(1e-9));
  }

  @Test
  void theCutFaceIsSeenAndPickedWhereThePlaneGoesThrough() {
    Shape block = shape(7, DemoDeck.block(0, 0, 0, 1, 1, 1));
    Scene cut = new SectionBox(Transform.IDENTITY, HALF).cut(Scene.of(List.of(block)));
    Image image = Renderer.draw(cut, Camera.lookingFrom(Vec3.X, cut.points(), 1), SMALL);
    int middle = image.argb(SMALL.width() / 2, SMALL.height() / 2);
    Image whole = Renderer.draw(Scene.of(List.of(block)), Camera.plan(cut, 1), SMALL);
    assertThat(image.id(SMALL.width() / 2, SMALL.height() / 2)).isEqualTo(7);
    assertThat(middle & 255).isLessThan(whole.argb(SMALL.width() / 2, SMALL.height() / 2) & 255);
  }

  @Test
  void aSmallPictureIsTheSameEverywhereAndSeesEachChange() {
    String expected = "0a223386";
    assertThat(golden(0.75)).startsWith(expected);
    assertThat(golden(0.76)).doesNotStartWith(expected);
  }

  private static String golden(double across) {
    Box box = new Box(new Vec3(0.1, -9, -9), new Vec3(across, 9, 9));
    Scene cut = new SectionBox(Transform.IDENTITY, box).cut(DemoDeck.scene());
    return RendererTest.hash(Renderer.draw(cut, Camera.fromBelow(cut, SMALL.aspect()), SMALL));
  }
}
