package org.underlee.picture;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.underlee.geom.Vec2;

/**
 * Text as lines, for raster pictures: system fonts differ from machine to machine. Letters, digits
 * and the signs that labels need; any other character comes out as a small box.
 */
final class StrokeFont {
  /** The built-in letters, made once. */
  static final StrokeFont BUILT_IN = new StrokeFont();

  /** Height of capitals in the units of the glyph table. */
  private static final double CAPITAL = 12;

  private static final double SPACE = 5;
  private static final double GAP = 3;

  private final Map<Integer, Glyph> glyphs = new HashMap<>();
  private final Glyph unknown;

  private record Glyph(double width, List<List<Vec2>> strokes) {}

  private StrokeFont() {
    Glyphs.TABLE.lines().forEach(line -> glyphs.put(line.codePointAt(0), glyph(line.substring(2))));
    glyphs.put((int) ' ', new Glyph(SPACE, List.of()));
    unknown = glyph("0,0 6,0 6,10 0,10 0,0");
  }

  /** Width of a text whose capitals are 1 high. */
  double width(String text) {
    double sum = text.codePoints().mapToDouble(c -> glyph(c).width + GAP).sum();
    return Math.max(0, sum - GAP) / CAPITAL;
  }

  /** The lines of a text with capitals 1 high; it starts at the origin, on the base line, y up. */
  List<List<Vec2>> strokes(String text) {
    List<List<Vec2>> all = new ArrayList<>();
    double at = 0;
    for (int c : text.codePoints().toArray()) {
      Glyph glyph = glyph(c);
      Vec2 start = new Vec2(at, 0);
      for (List<Vec2> stroke : glyph.strokes) {
        all.add(stroke.stream().map(p -> p.plus(start).times(1 / CAPITAL)).toList());
      }
      at += glyph.width + GAP;
    }
    return all;
  }

  private Glyph glyph(int codePoint) {
    return glyphs.getOrDefault(codePoint, unknown);
  }

  private static Glyph glyph(String strokes) {
    List<List<Vec2>> lines = new ArrayList<>();
    double width = 0;
    for (String stroke : strokes.split(" \\| ", -1)) {
      List<Vec2> line = new ArrayList<>();
      for (String point : stroke.split(" ", -1)) {
        int comma = point.indexOf(',');
        double x = Double.parseDouble(point.substring(0, comma));
        line.add(new Vec2(x, Double.parseDouble(point.substring(comma + 1))));
        width = Math.max(width, x);
      }
      lines.add(line);
    }
    return new Glyph(width, lines);
  }
}
