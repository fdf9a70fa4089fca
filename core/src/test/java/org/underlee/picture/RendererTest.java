package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

class RendererTest {
  private static final RasterSettings SMALL = new RasterSettings(120, 90, 1, 1);
  private static final Vec3 ASKEW = new Vec3(-0.4, -0.8, -0.5);

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void pickingAgreesWithARayThroughTheMiddleOfEachPixel(long seed) {
    Scene scene = randomScene(seed);
    assertPicks(scene, Camera.lookingFrom(ASKEW, scene.points(), SMALL.aspect()), SMALL);
    assertPicks(scene, Camera.perspective(ASKEW, scene.points(), SMALL.aspect()), SMALL);
  }

  @Test
  void aFinerPictureIsPickedJustRightOfAndBelowTheMiddle() {
    Scene scene = randomScene(7);
    Camera camera = Camera.fromBelow(scene, SMALL.aspect());
    assertPicks(scene, camera, SMALL.withFineness(2));
    assertPicks(scene, camera, SMALL.withFineness(3));
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13})
  void whatReachesBehindTheEyeIsCutAtTheNearPlane(long seed) {
    Scene scene = randomScene(seed);
    Transform inside = Transform.frame(new Vec3(0, 0.5, 0), ASKEW.unit(), Vec3.X);
    assertPicks(scene, new Camera(inside, 1.5, 0.8), SMALL);
  }

  @Test
  void theNearerShapeHidesTheFartherInEitherOrder() {
    Shape near = shape(1, DemoDeck.block(0, 0, 1, 1, 1, 2));
    Shape far = shape(2, DemoDeck.block(0, 0, -1, 1, 1, 0.5));
    for (List<Shape> order : List.of(List.of(near, far), List.of(far, near))) {
      Scene scene = Scene.of(order);
      Image image = Renderer.draw(scene, Camera.plan(scene, 1), new RasterSettings(50, 50, 1, 1));
      assertThat(image.id(25, 25)).isEqualTo(1);
    }
  }

  @Test
  void thePixelsAreTheSameForAnyNumberOfThreads() {
    Scene scene = DemoDeck.scene();
    RasterSettings settings = RasterSettings.of(333, 217);
    Camera camera = Camera.fromBelow(scene, settings.aspect());
    Image one = Renderer.draw(scene, camera, settings);
    for (int threads : new int[] {2, 4, 7}) {
      Image many = Renderer.draw(scene, camera, settings.withThreads(threads));
      assertThat(many.pixels()).isEqualTo(one.pixels());
      assertThat(many.ids()).isEqualTo(one.ids());
      assertThat(Png.encode(many)).isEqualTo(Png.encode(one));
    }
  }

  @Test
  void aSceneAThousandKilometresOffLooksTheSame() {
    Scene here = DemoDeck.scene();
    Transform away = Transform.translation(new Vec3(1e6, -1e6, 1000));
    Scene there =
        Scene.of(
                here.shapes().stream()
                    .map(s -> new Shape(s.id(), "", s.mesh().transformed(away), s.paint(), true))
                    .toList())
            .withNotes(
                here.notes().stream()
                    .map(n -> new Note(away.apply(n.at()), n.text(), n.height()))
                    .toList());
    RasterSettings settings = RasterSettings.of(320, 200);
    Image a = Renderer.draw(here, Camera.fromBelow(here, settings.aspect()), settings);
    Image b = Renderer.draw(there, Camera.fromBelow(there, settings.aspect()), settings);
    assertThat(b.ids()).isEqualTo(a.ids());
    assertThat(b.pixels()).isEqualTo(a.pixels());
  }

  @Test
  void aSmallPictureIsTheSameEverywhereAndSeesEachChange() {
    String expected = "e9cad056";
    assertThat(hash(golden(0.5, 0xd9b98a))).startsWith(expected);
    assertThat(hash(golden(0.52, 0xd9b98a))).doesNotStartWith(expected);
    assertThat(hash(golden(0.5, 0xd9b98b))).doesNotStartWith(expected);
  }

  @Test
  void aClosedMeshWithItsFacesInsideOutIsDrawnFromItsOutside() {
    Mesh right = DemoDeck.block(0, 0, 0, 1, 2, 3);
    Image a = draw(List.of(shape(1, right)));
    Image b = draw(List.of(shape(1, turned(right))));
    assertThat(b.pixels()).isEqualTo(a.pixels());
  }

  @Test
  void anOpenMeshIsSeenFromBothSides() {
    Mesh sheet = new Mesh(new double[] {0, 0, 0, 2, 0, 0, 0, 2, 0}, new int[] {0, 1, 2});
    Scene scene = Scene.of(List.of(shape(5, sheet)));
    for (Vec3 side : List.of(Vec3.Z, Vec3.Z.negated())) {
      Image image = Renderer.draw(scene, Camera.lookingFrom(side, scene.points(), 1), SMALL);
      assertThat(image.ids()).contains(5);
    }
  }

  @Test
  void surfacesInOnePlaneDoNotSpeckleTheFirstShows() {
    Shape outer = shape(1, DemoDeck.block(0, 0, 0, 3.1, 1.3, 0.1));
    Shape inner = shape(2, DemoDeck.block(0.3, 0.2, 0, 2.7, 0.9, 0.1));
    Scene scene = Scene.of(List.of(outer, inner));
    for (double tilt : new double[] {0.2, 0.6, 1.5, 3}) {
      Vec3 from = new Vec3(0.3 * tilt, -tilt, 0.9);
      for (Camera camera :
          List.of(
              Camera.perspective(from, scene.points(), SMALL.aspect()),
              Camera.lookingFrom(from, scene.points(), SMALL.aspect()))) {
        int[] ids = Renderer.draw(scene, camera, SMALL).ids();
        assertThat(Arrays.stream(ids).filter(id -> id == 1).count()).isGreaterThan(1000);
        // The inner block's sides end in that plane: their rounding may win a sample on the line.
        assertThat(Arrays.stream(ids).filter(id -> id == 2).count()).isLessThanOrEqualTo(2);
      }
    }
  }

  @Test
  void contextIsSeenThroughAndPickedThrough() {
    Shape solid = shape(1, DemoDeck.block(0, 0, 0, 1, 1, 0.2));
    Mesh above = DemoDeck.block(-0.5, 0.25, 1, 1.5, 0.75, 1.1);
    Shape faded = new Shape(2, "context", above, Palette.CONTEXT, false);
    Scene scene = Scene.of(List.of(solid, faded));
    Camera camera = Camera.plan(scene, 1);
    RasterSettings settings = new RasterSettings(100, 100, 1, 1);
    Image both = Renderer.draw(scene, camera, settings);
    Image alone = Renderer.draw(Scene.of(List.of(solid)), camera, settings);
    assertThat(both.id(50, 50)).isEqualTo(1);
    assertThat(both.id(10, 50)).isEqualTo(2);
    assertThat(both.argb(50, 50)).isNotEqualTo(alone.argb(50, 50));
    assertThat(both.argb(50, 32)).isEqualTo(alone.argb(50, 32));
  }

  @Test
  void linesAreDrawnAtCreasesAndNotAcrossAFace() {
    Shape box = shape(1, DemoDeck.block(0, 0, 0, 1, 1, 1));
    RasterSettings settings = new RasterSettings(100, 100, 1, 1);
    Scene scene = Scene.of(List.of(box));
    Image image = Renderer.draw(scene, Camera.plan(scene, 1), settings);
    int face = image.argb(50, 50);
    for (int x = 8; x < 92; x++) {
      for (int y = 8; y < 92; y++) {
        assertThat(image.argb(x, y)).isEqualTo(face);
      }
    }
    assertThat(brightest(image, 50)).isLessThan(Palette.BACKGROUND & 255);
    int dark = 0;
    for (int x = 0; x < 100; x++) {
      dark += (image.argb(x, 50) & 255) < (face & 255) / 2 ? 1 : 0;
    }
    assertThat(dark).isBetween(2, 4);
  }

  @Test
  void aShapeWithoutEdgesHasNoLines() {
    Mesh mesh = DemoDeck.block(0, 0, 0, 1, 1, 1);
    Shape box = new Shape(1, "box", mesh, Palette.JOIST, false);
    Scene scene = Scene.of(List.of(box));
    Image image = Renderer.draw(scene, Camera.plan(scene, 1), new RasterSettings(60, 60, 1, 1));
    assertThat(Arrays.stream(image.pixels()).distinct().count()).isEqualTo(2);
  }

  @Test
  void anEmptySceneIsBackground() {
    Camera camera = new Camera(Transform.IDENTITY, 1, 1);
    Image image = Renderer.draw(Scene.of(List.of()), camera, new RasterSettings(4, 3, 2, 1));
    assertThat(image.pixels()).containsOnly(Colours.OPAQUE | Palette.BACKGROUND).hasSize(12);
    assertThat(image.ids()).containsOnly(0);
  }

  private static void assertPicks(Scene scene, Camera camera, RasterSettings settings) {
    Image image = Renderer.draw(scene, camera, settings);
    RayCast rays = new RayCast(scene, camera, settings);
    int fine = settings.fineness();
    double middle = (fine / 2 + 0.5) / fine;
    int compared = 0;
    int hits = 0;
    for (int y = 0; y < image.height(); y++) {
      for (int x = 0; x < image.width(); x++) {
        int id = rays.id(x + middle, y + middle);
        if (id != RayCast.OPEN) {
          assertThat(image.id(x, y)).as("pixel %d, %d", x, y).isEqualTo(id);
          compared++;
          hits += id > 0 ? 1 : 0;
        }
      }
    }
    assertThat(compared).isGreaterThan(image.width() * image.height() * 9 / 10);
    assertThat(hits).isGreaterThan(500);
  }

  /** Blocks at random angles that run into each other, and loose triangles. */
  private static Scene randomScene(long seed) {
    Random random = new Random(seed);
    List<Shape> shapes = new ArrayList<>();
    for (int i = 1; i <= 14; i++) {
      Transform frame =
          Transform.frame(
              randomPoint(random), randomPoint(random), randomPoint(random).plus(Vec3.X));
      Outline section = Outline.rectangle(0, 0, 0.1 + random.nextDouble(), 0.3);
      Mesh mesh = Extrusion.straight(frame, section, 0.2 + random.nextDouble()).mesh();
      shapes.add(shape(i, i % 5 == 0 ? triangle(random) : mesh));
    }
    return Scene.of(shapes);
  }

  private static Mesh triangle(Random random) {
    double[] xyz = random.doubles(9, -1, 1).toArray();
    return new Mesh(xyz, new int[] {0, 1, 2});
  }

  private static Vec3 randomPoint(Random random) {
    return new Vec3(
        2 * random.nextDouble() - 1, 2 * random.nextDouble() - 1, 2 * random.nextDouble() - 1);
  }

  private static Shape shape(int id, Mesh mesh) {
    return new Shape(id, "shape " + id, mesh, Palette.JOIST, true);
  }

  private static Image draw(List<Shape> shapes) {
    Scene scene = Scene.of(shapes);
    return Renderer.draw(scene, Camera.fromBelow(scene, SMALL.aspect()), SMALL);
  }

  private static Mesh turned(Mesh mesh) {
    Transform mirror = new Transform(Vec3.ZERO, Vec3.X.negated(), Vec3.Y, Vec3.Z);
    Mesh mirrored = mesh.transformed(mirror);
    int[] corners = new int[3 * mesh.triangleCount()];
    double[] xyz = new double[3 * mesh.vertexCount()];
    for (int i = 0; i < corners.length; i++) {
      corners[i] = mirrored.corner(i / 3, i % 3);
    }
    for (int i = 0; i < mesh.vertexCount(); i++) {
      Vec3 p = mesh.vertex(i);
      xyz[3 * i] = p.x();
      xyz[3 * i + 1] = p.y();
      xyz[3 * i + 2] = p.z();
    }
    Mesh insideOut = new Mesh(xyz, corners);
    assertThat(insideOut.volume()).isNegative();
    return insideOut;
  }

  private static int brightest(Image image, int row) {
    int most = 0;
    for (int x = 10; x < 90; x++) {
      most = Math.max(most, image.argb(x, row) & 255);
    }
    return most;
  }

  private static Image golden(double height, int rgb) {
    Mesh block = DemoDeck.block(0, 0, 0, 1, 0.25, height);
    Shape first = new Shape(1, "a", block, Paint.solid(rgb), true);
    Mesh other = DemoDeck.block(0.5, -0.5, 0.125, 0.75, 1, 0.25);
    Scene scene = Scene.of(List.of(first, new Shape(2, "b", other, Palette.PAN, true)));
    Transform frame = Transform.frame(new Vec3(0.5, 0.125, 0.25), ASKEW, Vec3.X);
    return Renderer.draw(scene, new Camera(frame, 2, 4), new RasterSettings(64, 48, 2, 1));
  }

  static String hash(Image image) {
    ByteBuffer bytes = ByteBuffer.allocate(8 * image.width() * image.height());
    bytes.asIntBuffer().put(image.pixels()).put(image.ids());
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes.array());
      return HexFormat.of().formatHex(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
