package org.underlee.picture;

import org.underlee.geom.Vec2;

/** Numbers, colours and texts as they stand in SVG. */
public final class SvgText {
  private static final int PARTS = 1000;

  /** Makes every colour seven digits long, so that none of its own is lost. */
  private static final int BEYOND_RGB = 0x1000000;

  private SvgText() {}

  /** Three decimals at most, no trailing zeros, a point in every locale, never {@code -0}. */
  public static String number(double value) {
    long parts = Math.round(Math.abs(value) * PARTS);
    StringBuilder text = new StringBuilder(value < 0 && parts > 0 ? "-" : "");
    text.append(parts / PARTS);
    if (parts % PARTS != 0) {
      String decimals = Long.toString(PARTS + parts % PARTS).substring(1);
      int end = decimals.length();
      while (decimals.charAt(end - 1) == '0') {
        end--;
      }
      text.append('.').append(decimals, 0, end);
    }
    return text.toString();
  }

  public static String pair(Vec2 p) {
    return number(p.x()) + "," + number(p.y());
  }

  public static String colour(int rgb) {
    return "#" + Integer.toHexString(BEYOND_RGB | rgb).substring(1);
  }

  /** Marks are escaped; what XML 1.0 has no place for is left out. */
  public static String escaped(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints().filter(SvgText::isAllowed).forEach(c -> append(out, c));
    return out.toString();
  }

  private static void append(StringBuilder out, int codePoint) {
    switch (codePoint) {
      case '<' -> out.append("&lt;");
      case '>' -> out.append("&gt;");
      case '&' -> out.append("&amp;");
      default -> out.appendCodePoint(codePoint);
    }
  }

  private static boolean isAllowed(int c) {
    boolean control = c < ' ' && c != '\t' && c != '\n' && c != '\r';
    boolean half = c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE;
    return !control && !half && c != 0xfffe && c != 0xffff;
  }
}
