package org.underlee.units;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Sizes of lumber by what the trade calls it: a 2x10 is 1 1/2 by 9 1/4 in. Source: PS 20, American
 * Softwood Lumber Standard, dressed dry sizes; the table is in {@code dressed-lumber.csv}.
 */
public final class DressedLumber {
  private static final String TABLE = "dressed-lumber.csv";

  /** Metres. */
  public record Size(double thickness, double width) {}

  private final Map<String, Size> sizes;

  private DressedLumber(Map<String, Size> sizes) {
    this.sizes = sizes;
  }

  /** The table that comes with the program. */
  public static DressedLumber table() {
    try (InputStream in = DressedLumber.class.getResourceAsStream(TABLE)) {
      if (in == null) {
        throw new IllegalStateException("the table of lumber sizes is missing: " + TABLE);
      }
      return read(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static DressedLumber read(String text) {
    Map<String, Size> sizes = new LinkedHashMap<>();
    text.lines()
        .filter(line -> !line.isBlank() && !line.startsWith("#"))
        .map(line -> line.split(",", -1))
        .forEach(cell -> sizes.put(cell[0], new Size(inches(cell[1]), inches(cell[2]))));
    return new DressedLumber(sizes);
  }

  private static double inches(String cell) {
    return Double.parseDouble(cell) * Lengths.INCH;
  }

  /** The size of a piece called so, such as {@code 2x10}; empty when the table has none. */
  public Optional<Size> size(String nominal) {
    return Optional.ofNullable(sizes.get(nominal));
  }

  /** What the table has, in its order. */
  public Iterable<String> nominals() {
    return sizes.keySet();
  }
}
