package org.underlee.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.geom.Vec3;
import org.underlee.picture.Labels.Label;
import org.underlee.picture.Labels.Plate;

/** Names on a finished picture: where there is room for them, and nowhere else. */
class LabelsTest {
  private static final RasterSettings SIZE = new RasterSettings(640, 400, 1, 1);

  private static final Scene DECK = Scene.of(DemoDeck.scene().shapes());

  private static List<Label> names() {
    List<Label> names = new ArrayList<>();
    DECK.shapes().forEach(s -> names.add(new Label(s.label(), Set.of(s.id()))));
    return names;
  }

  private static Image deck(double height) {
    Camera fit = Camera.fromBelow(DECK, SIZE.aspect());
    return Renderer.draw(
        DECK, new Camera(fit.frame(), fit.height() * height, fit.eyeDistance()), SIZE);
  }

  private static boolean covers(Plate p, int x, int y) {
    return x >= p.left() && x < p.left() + p.width() && y >= p.top() && y < p.top() + p.height();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.3, 0.7, 1, 2})
  void noPlateTouchesAnotherOrLeavesThePictureAndEachLiesOnWhatItNames(double height) {
    Image image = deck(height);
    List<Plate> plates = Labels.places(image, names(), 1);
    assertThat(plates).isNotEmpty();
    int[] covered = new int[SIZE.width() * SIZE.height()];
    for (Plate plate : plates) {
      int own = 0;
      for (int i = 0; i < covered.length; i++) {
        int x = i % SIZE.width();
        int y = i / SIZE.width();
        if (covers(plate, x, y)) {
          covered[i]++;
          int id = image.id(x, y);
          own += id > 0 && DECK.shapes().get(id - 1).label().equals(plate.text()) ? 1 : 0;
        }
      }
      assertThat(own)
          .as(plate.toString())
          .isGreaterThan(plate.width() * plate.height() * 3 / 10 - 1);
    }
    assertThat(covered).doesNotContain(2);
    assertThat(java.util.Arrays.stream(covered).sum())
        .isEqualTo(plates.stream().mapToInt(p -> p.width() * p.height()).sum());
  }

  @Test
  void fromFarAwayThereIsRoomForNone() {
    assertThat(Labels.places(deck(30), names(), 1)).isEmpty();
  }

  @Test
  void whatIsHiddenHasNoNameUntilItIsSeen() {
    Shape front = new Shape(1, "front", DemoDeck.block(0, 0, 1, 2, 2, 2), Palette.JOIST, true);
    Shape behind = new Shape(2, "behind", DemoDeck.block(0, 0, 0, 2, 2, 0.9), Palette.PAN, true);
    Scene scene = Scene.of(List.of(front, behind));
    List<Label> names = List.of(new Label("behind", Set.of(2)), new Label("front", Set.of(1)));
    Image above = Renderer.draw(scene, Camera.plan(scene, 1.6), SIZE);
    assertThat(Labels.places(above, names, 1)).extracting(Plate::text).containsExactly("front");
    Camera side = Camera.lookingFrom(Vec3.X, scene.points(), 1.6);
    assertThat(Labels.places(Renderer.draw(scene, side, SIZE), names, 1))
        .extracting(Plate::text)
        .containsExactly("behind", "front");
  }

  @Test
  void whatCanBePickedAndWhatNoPlateCoversStaysTheSame() {
    Image image = deck(1);
    Image named = Labels.over(image, names(), 1, Ink.DAY);
    List<Plate> plates = Labels.places(image, names(), 1);
    assertThat(named.ids()).isEqualTo(image.ids());
    int changed = 0;
    for (int y = 0; y < SIZE.height(); y++) {
      for (int x = 0; x < SIZE.width(); x++) {
        int px = x;
        int py = y;
        if (named.argb(x, y) != image.argb(x, y)) {
          changed++;
          assertThat(plates).anyMatch(p -> covers(p, px, py));
        }
      }
    }
    assertThat(changed).isGreaterThan(100);
  }

  @Test
  void lettersAreTwiceAsHighOnAScreenOfTwiceThePixels() {
    Image image = deck(0.5);
    int once = Labels.places(image, names(), 1).get(0).height();
    assertThat(Labels.places(image, names(), 2)).isNotEmpty().allMatch(p -> p.height() == 2 * once);
  }

  @Test
  void aSmallPictureIsTheSameEverywhereAndSeesEachChange() {
    String expected = "b5fc0f32";
    assertThat(golden("B1", Ink.DAY)).startsWith(expected);
    assertThat(golden("B2", Ink.DAY)).doesNotStartWith(expected);
    assertThat(golden("B1", Ink.NIGHT)).doesNotStartWith(expected);
  }

  private static String golden(String text, Ink ink) {
    Scene scene =
        Scene.of(List.of(new Shape(1, "a", DemoDeck.block(0, 0, 0, 2, 1, 1), Palette.PAN, true)));
    RasterSettings small = new RasterSettings(80, 60, 2, 1);
    Image image = Renderer.draw(scene, Camera.fromBelow(scene, small.aspect()), small);
    return RendererTest.hash(Labels.over(image, List.of(new Label(text, Set.of(1))), 1, ink));
  }
}
