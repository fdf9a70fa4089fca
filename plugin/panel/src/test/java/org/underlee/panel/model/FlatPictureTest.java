package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Vec2;
import org.underlee.picture.PlanBuilder;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanItem;
import org.underlee.picture.PlanStyle;

class FlatPictureTest {
  /** A square of a metre. */
  private static final PlanDrawing FRAMING =
      new PlanBuilder()
          .area(
              List.of(new Vec2(0, 0), new Vec2(1, 0), new Vec2(1, 1), new Vec2(0, 1)),
              PlanStyle.JOIST)
          .build("framing");

  /** The same with a text to the left of it. */
  private static final PlanDrawing WITH_TEXT =
      new PlanBuilder()
          .area(
              List.of(new Vec2(0, 0), new Vec2(1, 0), new Vec2(1, 1), new Vec2(0, 1)),
              PlanStyle.JOIST)
          .label(
              new Vec2(0, 0),
              "high seat 93 mm above joist bottom",
              PlanBuilder.SMALL_TEXT_MM,
              PlanItem.Anchor.END,
              0,
              PlanStyle.TAG)
          .build("with text");

  private final Screen screen = new Screen();
  private final FlatPicture picture = new FlatPicture(screen);

  @AfterEach
  void close() {
    picture.close();
  }

  private void show(PlanDrawing drawing, boolean fit) throws InterruptedException {
    picture.show(Optional.of(drawing), fit);
    screen.runNext();
  }

  private FlatWindow window() {
    return picture.window().orElseThrow();
  }

  @Test
  void aViewThatNoHandHasChosenMakesRoomForTextsThatComeLater() throws InterruptedException {
    picture.resize(300, 300, 1);
    show(FRAMING, true);
    assertThat(window().shows(FRAMING)).isTrue();
    assertThat(window().shows(WITH_TEXT)).as("as it is, the text would be cut off").isFalse();
    show(WITH_TEXT, false);
    assertThat(window().shows(WITH_TEXT)).isTrue();
  }

  @Test
  void aViewThatStillShowsAllOfADrawingStaysAsItIs() throws InterruptedException {
    picture.resize(300, 300, 1);
    show(WITH_TEXT, true);
    FlatWindow before = window();
    show(FRAMING, false);
    assertThat(window()).isEqualTo(before);
  }

  @Test
  void whatAHandHasZoomedToStaysWhenTheWindowGetsAnotherSizeAndWhenTheDrawingChanges()
      throws InterruptedException {
    picture.resize(300, 300, 1);
    show(FRAMING, true);
    picture.zoom(0.25, 80, 90);
    screen.runNext();
    FlatWindow zoomed = window();
    picture.resize(500, 200, 1);
    screen.runNext();
    assertThat(window().centre()).isEqualTo(zoomed.centre());
    assertThat(window().metresPerPixel()).isEqualTo(zoomed.metresPerPixel());
    assertThat(picture.image().get().orElseThrow().width()).isEqualTo(500);
    show(WITH_TEXT, false);
    assertThat(window().centre()).isEqualTo(zoomed.centre());
    picture.fit();
    screen.runNext();
    assertThat(window().shows(WITH_TEXT)).isTrue();
  }

  @Test
  void anotherSizeOfTheWindowShowsAllAgainWhereNoHandHasChosen() throws InterruptedException {
    picture.resize(600, 600, 1);
    show(WITH_TEXT, true);
    picture.resize(320, 300, 1);
    screen.runNext();
    assertThat(window().shows(WITH_TEXT)).isTrue();
  }

  @Test
  void whatIsAtThePixelStaysThereWhenZoomed() throws InterruptedException {
    picture.resize(300, 300, 1);
    show(FRAMING, true);
    Vec2 under = picture.place(80, 90);
    picture.zoom(0.5, 80, 90);
    Vec2 after = picture.pixel(under);
    assertThat(after.x()).isCloseTo(80, within(1e-9));
    assertThat(after.y()).isCloseTo(90, within(1e-9));
  }

  @Test
  void lettersAreAsMuchLargerAsThoseOfThePanelAndStillAllIsSeen() throws InterruptedException {
    picture.resize(600, 600, 1);
    show(WITH_TEXT, true);
    double usual = window().pixelsPerMm();
    picture.letters(1.5);
    screen.runNext();
    assertThat(window().pixelsPerMm()).isCloseTo(1.5 * usual, within(1e-9));
    assertThat(window().shows(WITH_TEXT)).isTrue();
  }
}
