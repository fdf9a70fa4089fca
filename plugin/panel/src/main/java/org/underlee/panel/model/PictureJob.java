package org.underlee.panel.model;

import java.util.Optional;
import java.util.Set;
import org.underlee.layout.Layout;
import org.underlee.picture.DeckLabels;
import org.underlee.picture.DeckPicture;
import org.underlee.picture.DeckPicture.Family;
import org.underlee.picture.Image;
import org.underlee.picture.Ink;
import org.underlee.picture.Labels;
import org.underlee.picture.Look;
import org.underlee.picture.Paint;
import org.underlee.picture.Palette;
import org.underlee.picture.RasterSettings;
import org.underlee.picture.Renderer;
import org.underlee.picture.Rim;
import org.underlee.picture.Shape;

/**
 * One picture to be drawn: everything that it depends on.
 *
 * @param edition of the result that is drawn
 * @param labelled whose parts are named where there is room
 * @param scale pixels for one of a screen without scaling
 */
record PictureJob(
    Renderer renderer,
    DeckPicture picture,
    long edition,
    Orbit orbit,
    RasterSettings settings,
    Set<Family> shown,
    Set<Integer> selected,
    Optional<Layout> labelled,
    double scale,
    Tone tone) {
  private static final Paint SELECTED = Paint.solid(0xe0813a);

  /** Around what is selected, so that not the colour alone says so. */
  private static final int RIM = 0x3d1600;

  private static final int RIM_AT_NIGHT = 0xfff3e0;

  /** Pixels of a screen without scaling. */
  private static final double RIM_WIDE = 2;

  /** How much of faded things is seen before a dark ground. */
  private static final double FADED_AT_NIGHT = 0.16;

  Image draw() {
    Image drawn =
        Rim.around(
            renderer.draw(
                orbit.camera(), settings, new Look(tone.pictureBackground(), this::paint)),
            selected,
            tone.isDark() ? RIM_AT_NIGHT : RIM,
            (int) Math.max(1, Math.round(RIM_WIDE * scale)));
    return labelled
        .map(l -> Labels.over(drawn, DeckLabels.of(picture, l), scale, ink()))
        .orElse(drawn);
  }

  private Ink ink() {
    return switch (tone) {
      case LIGHT -> Ink.DAY;
      case DARK -> Ink.NIGHT;
      case CONTRAST -> Ink.CONTRAST;
    };
  }

  private Paint paint(Shape shape) {
    Family family = picture.subject(shape.id()).family();
    if (!shown.contains(family)) {
      return Look.HIDDEN;
    }
    if (selected.contains(shape.id())) {
      return SELECTED;
    }
    return family == Family.SURROUNDINGS && tone.isDark()
        ? Palette.CONTEXT.faded(FADED_AT_NIGHT)
        : shape.paint();
  }
}
