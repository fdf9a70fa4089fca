package org.underlee.picture;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.underlee.geom.Vec2;

/**
 * Writes a plan as SVG 1.1 in paper millimetres. Numbers have three decimals at most and styles
 * come in the order of their names, so the same drawing gives the same text. Texts are text: they
 * can be searched, and are set in the viewer's own letters.
 */
public final class Svg {
  /** Capitals are about this share of a font's size. */
  private static final double CAPITAL_SHARE = 0.7;

  private final PlanSheet sheet;
  private final StringBuilder out = new StringBuilder();

  private Svg(PlanSheet sheet) {
    this.sheet = sheet;
  }

  /**
   * The drawing on a sheet as one SVG document.
   *
   * @throws IllegalArgumentException when two different styles share a name
   */
  public static String write(PlanDrawing drawing, PlanSheet sheet) {
    Svg svg = new Svg(sheet);
    svg.head(drawing);
    drawing.items().forEach(svg::item);
    return svg.out.append("</svg>\n").toString();
  }

  private void head(PlanDrawing drawing) {
    String width = SvgText.number(sheet.widthMm());
    String height = SvgText.number(sheet.heightMm());
    out.append(
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\"")
        .append(" width=\"" + width + "mm\" height=\"" + height + "mm\"")
        .append(" viewBox=\"0 0 " + width + " " + height + "\">\n")
        .append("<title>" + SvgText.escaped(drawing.title()) + "</title>\n<style>\n")
        .append("svg{fill:none;font-family:Arial,Helvetica,sans-serif;stroke-linejoin:miter}\n")
        .append("text{stroke:none}\n");
    styles(drawing).values().forEach(this::style);
    out.append("</style>\n<rect width=\"" + width + "\" height=\"" + height + "\" fill=\"")
        .append(SvgText.colour(Palette.PAPER))
        .append("\"/>\n");
  }

  private static Map<String, PlanStyle> styles(PlanDrawing drawing) {
    Map<String, PlanStyle> styles = new TreeMap<>();
    for (PlanItem item : drawing.items()) {
      PlanStyle other = styles.putIfAbsent(item.style().name(), item.style());
      if (other != null && !other.equals(item.style())) {
        throw new IllegalArgumentException(
            "two styles share the name '" + other.name() + "': " + other + ", " + item.style());
      }
    }
    return styles;
  }

  private void style(PlanStyle style) {
    String name = "." + style.name();
    String ink = SvgText.colour(style.line());
    out.append(name + "{stroke:" + ink + ";stroke-width:" + SvgText.number(style.lineMm()));
    if (!style.dashMm().isEmpty()) {
      String dashes = style.dashMm().stream().map(SvgText::number).collect(Collectors.joining(" "));
      out.append(";stroke-dasharray:" + dashes);
    }
    out.append("}\n");
    style.fill().ifPresent(rgb -> out.append(name + ".area{fill:" + SvgText.colour(rgb) + "}\n"));
    out.append(name + ".ink{fill:" + ink + ";stroke:none}\n");
  }

  private void item(PlanItem item) {
    if (item instanceof PlanItem.Area area) {
      StringBuilder path = new StringBuilder(ring(area.outline().outer()));
      area.outline().holes().forEach(hole -> path.append(ring(hole)));
      element("path", item, " area", "d=\"" + path + "\" fill-rule=\"evenodd\"");
    } else if (item instanceof PlanItem.Line line) {
      polyline(line.points().stream().map(sheet::onPaper).toList(), item);
    } else if (item instanceof PlanItem.Arrow arrow) {
      ArrowOnPaper onPaper = ArrowOnPaper.of(arrow, sheet);
      polyline(onPaper.shaft(), item);
      onPaper.heads().forEach(h -> element("polygon", item, " ink", points(h)));
    } else if (item instanceof PlanItem.Circle circle) {
      Vec2 centre = sheet.onPaper(circle.centre());
      String radius = "\" r=\"" + SvgText.number(sheet.onPaper(circle.radius())) + "\"";
      element("circle", item, " area", at("cx", "cy", centre) + radius);
    } else if (item instanceof PlanItem.Label label) {
      label(label);
    }
  }

  private void label(PlanItem.Label label) {
    LabelBox box = LabelBox.of(label);
    Vec2 at = sheet.onPaper(label.at());
    if (label.style().fill().isPresent()) {
      List<Vec2> plate =
          box.corners().stream().map(c -> new Vec2(at.x() + c.x(), at.y() - c.y())).toList();
      element("polygon", label, " area", points(plate));
    }
    String place = "translate(" + SvgText.pair(at) + ")";
    String turn = label.turn() == 0 ? "" : " rotate(" + SvgText.number(-label.turn()) + ")";
    String anchor =
        switch (label.anchor()) {
          case START -> "start";
          case END -> "end";
          case MIDDLE, ABOVE, BELOW -> "middle";
        };
    out.append("<text class=\"" + label.style().name() + " ink\" transform=\"" + place + turn)
        .append("\" y=\"" + SvgText.number(-box.base()) + "\" text-anchor=\"" + anchor)
        .append("\" font-size=\"" + SvgText.number(label.sizeMm() / CAPITAL_SHARE) + "\">")
        .append(SvgText.escaped(label.text()))
        .append("</text>\n");
  }

  private void polyline(List<Vec2> onPaper, PlanItem item) {
    element("polyline", item, "", points(onPaper));
  }

  private void element(String name, PlanItem item, String role, String attributes) {
    out.append("<" + name + " class=\"" + item.style().name() + role + "\" ")
        .append(attributes)
        .append("/>\n");
  }

  private String ring(List<Vec2> ring) {
    return ring.stream()
        .map(p -> SvgText.pair(sheet.onPaper(p)))
        .collect(Collectors.joining("L", "M", "Z"));
  }

  private static String points(List<Vec2> onPaper) {
    return onPaper.stream().map(SvgText::pair).collect(Collectors.joining(" ", "points=\"", "\""));
  }

  private static String at(String x, String y, Vec2 p) {
    return x + "=\"" + SvgText.number(p.x()) + "\" " + y + "=\"" + SvgText.number(p.y());
  }
}
