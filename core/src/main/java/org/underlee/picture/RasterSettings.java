package org.underlee.picture;

/**
 * The size and fineness of a raster picture.
 *
 * @param width pixels
 * @param height pixels
 * @param fineness samples a pixel has along each side: 1 while a view turns, 2 or 3 for print
 * @param threads how many threads draw; the picture is the same for any number
 */
public record RasterSettings(int width, int height, int fineness, int threads) {
  private static final int MOST_PIXELS_A_SIDE = 16_384;
  private static final int FINEST = 8;
  private static final int USUAL_FINENESS = 2;

  /**
   * @throws IllegalArgumentException when a number is below one or past its limit
   */
  public RasterSettings {
    within("width", width, MOST_PIXELS_A_SIDE);
    within("height", height, MOST_PIXELS_A_SIDE);
    within("fineness", fineness, FINEST);
    within("threads", threads, Integer.MAX_VALUE);
  }

  /** Twice as fine as the pixels, on one thread. */
  public static RasterSettings of(int width, int height) {
    return new RasterSettings(width, height, USUAL_FINENESS, 1);
  }

  public RasterSettings withFineness(int samples) {
    return new RasterSettings(width, height, samples, threads);
  }

  public RasterSettings withThreads(int count) {
    return new RasterSettings(width, height, fineness, count);
  }

  public double aspect() {
    return (double) width / height;
  }

  private static void within(String name, int value, int most) {
    if (value < 1 || value > most) {
      throw new IllegalArgumentException(
          "the " + name + " of a picture is 1 to " + most + ", got " + value);
    }
  }
}
