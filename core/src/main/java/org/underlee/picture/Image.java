package org.underlee.picture;

/** A finished raster picture, with what can be picked at each pixel. Rows run from the top. */
public final class Image {
  private final int width;
  private final int height;
  private final int[] argb;
  private final int[] ids;

  /** Takes the arrays over: row by row, {@code width × height} long. */
  Image(int width, int height, int[] argb, int[] ids) {
    this.width = width;
    this.height = height;
    this.argb = argb;
    this.ids = ids;
  }

  /**
   * A picture that was made elsewhere, with nothing to pick.
   *
   * @param argb row by row from the top
   * @throws IllegalArgumentException when there are more or fewer pixels than the size says
   */
  public static Image of(int width, int height, int[] argb) {
    if (argb.length != width * height) {
      throw new IllegalArgumentException(
          "a picture of " + width + " × " + height + " has no " + argb.length + " pixels");
    }
    return new Image(width, height, argb.clone(), new int[argb.length]);
  }

  public int width() {
    return width;
  }

  public int height() {
    return height;
  }

  /** Opaque {@code 0xffRRGGBB}. */
  public int argb(int x, int y) {
    return argb[index(x, y)];
  }

  /** The id of the shape at a pixel; zero where there is none. */
  public int id(int x, int y) {
    return ids[index(x, y)];
  }

  /** A copy of all pixels, row by row. */
  public int[] pixels() {
    return argb.clone();
  }

  /** Copies all pixels, row by row, to the start of an array that is long enough. */
  public void copyPixels(int[] to) {
    System.arraycopy(argb, 0, to, 0, argb.length);
  }

  /** A copy of all picking ids, row by row. */
  public int[] ids() {
    return ids.clone();
  }

  /** As {@link #ids}, without a copy: not to be written to. */
  int[] ownIds() {
    return ids;
  }

  /** The same things to pick, in other colours; takes the array over. */
  Image recoloured(int[] others) {
    return new Image(width, height, others, ids);
  }

  private int index(int x, int y) {
    if (x < 0 || x >= width || y < 0 || y >= height) {
      throw new IndexOutOfBoundsException(
          "pixel " + x + ", " + y + " of a picture of " + width + " × " + height);
    }
    return y * width + x;
  }
}
