package org.underlee.picture;

import java.util.Locale;
import org.underlee.geom.Vec2;

/** Numbers, colours and texts as they stand in SVG. */
final class SvgText {
  private static final int PARTS = 1000;

  private SvgText() {}

  /** Three decimals at most, no trailing zeros, a point in every locale, never {@code -0}. */
  static String number(double value) {
    long parts = Math.round(Math.abs(value) * PARTS);
    StringBuilder text = new StringBuilder(value < 0 && parts > 0 ? "-" : "");
    text.append(parts / PARTS);
    if (parts % PARTS != 0) {
      String decimals = Long.toString(PARTS + parts % PARTS).substring(1);
      text.append('.').append(decimals.replaceAll("0+$", ""));
    }
    return text.toString();
  }

  static String pair(Vec2 p) {
    return number(p.x()) + "," + number(p.y());
  }

  static String colour(int rgb) {
    return String.format(Locale.ROOT, "#%06x", rgb);
  }

  /** Marks are escaped; what XML 1.0 has no place for is left out. */
  static String escaped(String text) {
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
