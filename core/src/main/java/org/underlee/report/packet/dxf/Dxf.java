package org.underlee.report.packet.dxf;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import org.underlee.geom.Vec2;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanItem;
import org.underlee.picture.PlanStyle;

/**
 * Writes a plan as DXF R12 ASCII, the form that every drafting program reads: full size, one unit a
 * millimetre, y up. Each style is a layer of its name: {@code JOIST}, {@code PAN}, {@code GUTTER}.
 * Fills are left to the reader. Characters beyond ASCII are written as {@code \U+00A0}, as R12 has
 * no encoding of its own.
 */
public final class Dxf {
  private static final double MM_PER_METRE = 1000;

  /** A thousandth of a hundredth of a millimetre: far below what is asked of a drawing. */
  private static final int DECIMALS = 5;

  /** Colours of AutoCAD's index: by turns, so that layers are told apart. */
  private static final int[] COLOURS = {7, 5, 3, 1, 6, 4, 30, 8};

  /** Length of an arrow's head on paper, mm, and half its width over that. */
  private static final double HEAD_MM = 2.2;

  private static final double SLENDER = 0.22;

  private final StringBuilder out = new StringBuilder();
  private final double denominator;

  private Dxf(double denominator) {
    this.denominator = denominator;
  }

  /**
   * The drawing as one DXF file.
   *
   * @param denominator of the scale that texts are sized for: 50 for 1:50
   */
  public static String write(PlanDrawing drawing, double denominator) {
    Dxf dxf = new Dxf(denominator);
    dxf.head(drawing);
    dxf.pair(0, "SECTION").pair(2, "ENTITIES");
    drawing.items().forEach(dxf::item);
    dxf.pair(0, "ENDSEC").pair(0, "EOF");
    return dxf.out.toString();
  }

  /** The layer that a style is drawn on. */
  static String layer(PlanStyle style) {
    return style.name().toUpperCase(Locale.ROOT);
  }

  private void head(PlanDrawing drawing) {
    pair(0, "SECTION").pair(2, "HEADER").pair(9, "$ACADVER").pair(1, "AC1009").pair(0, "ENDSEC");
    pair(0, "SECTION").pair(2, "TABLES");
    pair(0, "TABLE").pair(2, "LTYPE").pair(70, "1");
    pair(0, "LTYPE").pair(2, "CONTINUOUS").pair(70, "0").pair(3, "Solid").pair(72, "65");
    pair(73, "0").pair(40, "0.0").pair(0, "ENDTAB");
    TreeSet<String> layers = new TreeSet<>();
    drawing.items().forEach(i -> layers.add(layer(i.style())));
    pair(0, "TABLE").pair(2, "LAYER").pair(70, Integer.toString(layers.size()));
    int n = 0;
    for (String layer : layers) {
      pair(0, "LAYER").pair(2, layer).pair(70, "0");
      pair(62, Integer.toString(COLOURS[n++ % COLOURS.length])).pair(6, "CONTINUOUS");
    }
    pair(0, "ENDTAB");
    pair(0, "TABLE").pair(2, "STYLE").pair(70, "1").pair(0, "STYLE").pair(2, "STANDARD");
    pair(70, "0").pair(40, "0.0").pair(41, "1.0").pair(50, "0.0").pair(71, "0");
    pair(42, "2.5").pair(3, "txt").pair(4, "").pair(0, "ENDTAB");
    pair(0, "ENDSEC");
  }

  private void item(PlanItem item) {
    String layer = layer(item.style());
    if (item instanceof PlanItem.Area area) {
      polyline(area.outline().outer(), true, layer);
      area.outline().holes().forEach(h -> polyline(h, true, layer));
    } else if (item instanceof PlanItem.Line line) {
      polyline(line.points(), false, layer);
    } else if (item instanceof PlanItem.Arrow arrow) {
      polyline(List.of(arrow.from(), arrow.to()), false, layer);
      head(arrow.to(), arrow.from(), layer);
      if (arrow.bothEnds()) {
        head(arrow.from(), arrow.to(), layer);
      }
    } else if (item instanceof PlanItem.Circle circle) {
      pair(0, "CIRCLE").pair(8, layer);
      place(10, circle.centre());
      pair(40, number(circle.radius() * MM_PER_METRE));
    } else if (item instanceof PlanItem.Label label) {
      label(label, layer);
    }
  }

  private void head(Vec2 tip, Vec2 from, String layer) {
    Vec2 way = tip.minus(from);
    double length = way.length();
    if (length > 0) {
      double head = Math.min(HEAD_MM * denominator / MM_PER_METRE, length / 2);
      Vec2 back = tip.minus(way.times(head / length));
      Vec2 side = new Vec2(-way.y(), way.x()).times(SLENDER * head / length);
      pair(0, "SOLID").pair(8, layer);
      place(10, tip);
      place(11, back.plus(side));
      place(12, back.minus(side));
      place(13, back.minus(side));
    }
  }

  private void label(PlanItem.Label label, String layer) {
    int across =
        switch (label.anchor()) {
          case START -> 0;
          case MIDDLE, ABOVE, BELOW -> 1;
          case END -> 2;
        };
    int up =
        switch (label.anchor()) {
          case ABOVE -> 1;
          case BELOW -> 3;
          case START, MIDDLE, END -> 2;
        };
    pair(0, "TEXT").pair(8, layer);
    place(10, label.at());
    pair(40, number(label.sizeMm() * denominator));
    pair(1, ascii(label.text()));
    pair(50, number(label.turn()));
    pair(72, Integer.toString(across));
    pair(73, Integer.toString(up));
    place(11, label.at());
  }

  private static String ascii(String text) {
    StringBuilder ascii = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c >= ' ' && c <= '~') {
        ascii.append(c);
      } else if (c > '~') {
        ascii.append(String.format(Locale.ROOT, "\\U+%04X", (int) c));
      } else {
        ascii.append(' ');
      }
    }
    return ascii.toString();
  }

  private void polyline(List<Vec2> points, boolean closed, String layer) {
    if (points.size() == 2) {
      pair(0, "LINE").pair(8, layer);
      place(10, points.get(0));
      place(11, points.get(1));
      return;
    }
    pair(0, "POLYLINE").pair(8, layer).pair(66, "1").pair(70, closed ? "1" : "0");
    place(10, new Vec2(0, 0));
    for (Vec2 p : points) {
      pair(0, "VERTEX").pair(8, layer);
      place(10, p);
    }
    pair(0, "SEQEND").pair(8, layer);
  }

  /** A place as its x, y and z groups, ten apart. */
  private void place(int code, Vec2 metres) {
    pair(code, number(metres.x() * MM_PER_METRE));
    pair(code + 10, number(metres.y() * MM_PER_METRE));
    pair(code + 20, "0.0");
  }

  private static String number(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0.0" : rounded.toPlainString();
  }

  private Dxf pair(int code, String value) {
    out.append(code).append("\r\n").append(value).append("\r\n");
    return this;
  }
}
