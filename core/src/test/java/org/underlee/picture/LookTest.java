package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/** One prepared scene, seen in other ways. */
class LookTest {
  private static final RasterSettings SMALL = RasterSettings.of(160, 120);

  private static final List<Shape> SHAPES =
      List.of(
          new Shape(1, "a", DemoDeck.block(0, 0, 0, 1, 1, 1), Palette.JOIST, true),
          new Shape(2, "b", DemoDeck.block(1.5, 0, 0, 2.5, 1, 1), Palette.PAN, true),
          new Shape(3, "c", DemoDeck.block(0.5, -1, 0.2, 2, -0.5, 0.8), Palette.CONTEXT, true));

  private static final Scene SCENE = Scene.of(SHAPES);
  private static final Camera CAMERA =
      Camera.lookingFrom(new Vec3(-1, -2, 1), SCENE.points(), SMALL.aspect());

  @Test
  void thePlainLookIsTheSceneAsItIs() {
    Renderer renderer = Renderer.of(SCENE);
    assertThat(renderer.draw(CAMERA, SMALL, Look.PLAIN).pixels())
        .isEqualTo(renderer.draw(CAMERA, SMALL).pixels());
  }

  @Test
  void aHiddenShapeIsNeitherDrawnNorPicked() {
    Look withoutB =
        new Look(Palette.BACKGROUND, s -> s.label().equals("b") ? Look.HIDDEN : s.paint());
    Image hidden = Renderer.of(SCENE).draw(CAMERA, SMALL, withoutB);
    assertThat(IntStream.of(hidden.ids())).contains(1, 3).doesNotContain(2);
    Image all = Renderer.of(SCENE).draw(CAMERA, SMALL);
    assertThat(IntStream.of(all.ids())).contains(1, 2, 3);
  }

  @Test
  void anotherPaintChangesTheColourAndNothingElse() {
    Paint red = Paint.solid(0xff0000);
    Look look = new Look(0x000000, s -> s.label().equals("a") ? red : s.paint());
    Image changed = Renderer.of(SCENE).draw(CAMERA, SMALL, look);
    Image plain = Renderer.of(SCENE).draw(CAMERA, SMALL);
    assertThat(changed.ids()).isEqualTo(plain.ids());
    assertThat(changed.argb(0, 0)).isEqualTo(0xff000000);
    assertThat(changed.pixels()).isNotEqualTo(plain.pixels());
  }

  @Test
  void aRendererThatKnowsSomeMeshesDrawsWhatAFreshOneDraws() {
    Shape moved = new Shape(2, "b", DemoDeck.block(1.2, 0, 0, 2.9, 1, 0.4), Palette.PAN, true);
    Scene next = Scene.of(List.of(SHAPES.get(2), moved, SHAPES.get(0)));
    assertThat(Renderer.of(SCENE).with(next).draw(CAMERA, SMALL).pixels())
        .isEqualTo(Renderer.of(next).draw(CAMERA, SMALL).pixels());
  }

  @Test
  void whatIsTakenFromAPictureOfTheSameMiddleIsDrawnTheSameInAnotherPlaceOfTheRow() {
    Box b = SHAPES.get(1).mesh().bounds();
    Vec3 half = b.size().times(0.25);
    Mesh less =
        DemoDeck.block(
            b.min().x() + half.x(),
            b.min().y() + half.y(),
            b.min().z() + half.z(),
            b.max().x() - half.x(),
            b.max().y() - half.y(),
            b.max().z() - half.z());
    Shape inside = new Shape(4, "inside", less, Palette.PAN, true);
    Scene next = Scene.of(List.of(inside, SHAPES.get(2), SHAPES.get(1), SHAPES.get(0)));
    assertThat(next.bounds()).isEqualTo(SCENE.bounds());
    Image known = Renderer.of(SCENE).with(next).draw(CAMERA, SMALL);
    Image fresh = Renderer.of(next).draw(CAMERA, SMALL);
    assertThat(known.pixels()).isEqualTo(fresh.pixels());
    assertThat(known.ids()).isEqualTo(fresh.ids());
  }

  @Test
  void atNightLightAndDarkChangePlacesAndABlueStaysABlue() {
    assertThat(Ink.NIGHT.of(0xffffff)).isEqualTo(0x1d2326);
    assertThat(Ink.NIGHT.of(0x000000)).isEqualTo(0xffffff);
    int blue = Ink.NIGHT.of(0x1d5f8a);
    assertThat(blue & 255).isGreaterThan(blue >> 8 & 255).isGreaterThan(blue >> 16 & 255);
    assertThat(Ink.CONTRAST.of(Palette.INK)).isEqualTo(0xffffff);
    assertThat(Ink.CONTRAST.of(Palette.PAPER)).isZero();
    assertThat(Ink.DAY.of(0x123456)).isEqualTo(0x123456);
  }
}
