package org.underlee.picture;

/**
 * How a prepared scene is to be seen this time: what is behind it, and what differs from the paints
 * that its shapes were given.
 *
 * @param background {@code 0xRRGGBB}
 * @param paints by shape id: its own paint, another one, or {@link Look#HIDDEN}
 */
public record Look(int background, Repaint paints) {
  /** As the shapes are, on the usual background. */
  public static final Look PLAIN = new Look(Palette.BACKGROUND, Shape::paint);

  /** Stands for a shape that is not drawn and cannot be picked. */
  public static final Paint HIDDEN = new Paint(0, Double.MIN_VALUE);

  static boolean hides(Paint paint) {
    return paint.opacity() == HIDDEN.opacity();
  }

  /** Chooses the paint of a shape; asked from several threads at once. */
  public interface Repaint {
    Paint of(Shape shape);
  }
}
