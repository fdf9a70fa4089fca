package org.underlee.report.packet.pdf;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec2;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanItem;
import org.underlee.picture.PlanSheet;
import org.underlee.picture.PlanStyle;

/**
 * Draws a plan on a page.
 *
 * @param left of the drawing's paper on the page, mm; likewise top
 */
record DrawingOnPage(Pen pen, Fonts fonts, PlanSheet sheet, double left, double top) {
  private static final double HEAD_MM = 2.2;
  private static final double SLENDER = 0.22;

  /** A head takes no more than this share of a short arrow. */
  private static final double MOST = 0.45;

  /** Capitals of the embedded letters are this share of their size (OS/2 table of the font). */
  private static final double CAPITAL_SHARE = 0.714;

  private static final double GAP = 0.6;
  private static final double PLATE_SPACE = 0.35;
  private static final double MM_PER_METRE = 1000;

  void draw(PlanDrawing drawing) {
    drawing.items().forEach(this::item);
  }

  private void item(PlanItem item) {
    PlanStyle style = item.style();
    if (item instanceof PlanItem.Area area) {
      List<List<Vec2>> rings = new ArrayList<>();
      rings.add(on(area.outline().outer()));
      area.outline().holes().forEach(h -> rings.add(on(h)));
      style.fill().ifPresent(rgb -> pen.fill(rings, rgb));
      rings.forEach(r -> pen.outline(r, style.lineMm(), style.line(), style.dashMm()));
    } else if (item instanceof PlanItem.Line line) {
      pen.line(on(line.points()), style.lineMm(), style.line(), style.dashMm());
    } else if (item instanceof PlanItem.Arrow arrow) {
      arrow(arrow);
    } else if (item instanceof PlanItem.Circle circle) {
      Vec2 centre = on(circle.centre());
      double radius = circle.radius() * perMetre();
      style.fill().ifPresent(rgb -> pen.disc(centre, radius, rgb));
      pen.circle(centre, radius, style.lineMm(), style.line(), style.dashMm());
    } else if (item instanceof PlanItem.Label label) {
      label(label);
    }
  }

  private void arrow(PlanItem.Arrow arrow) {
    Vec2 from = on(arrow.from());
    Vec2 to = on(arrow.to());
    double length = to.minus(from).length();
    PlanStyle style = arrow.style();
    if (!(length > 0)) {
      return;
    }
    Vec2 head = to.minus(from).times(Math.min(HEAD_MM, MOST * length) / length);
    pen.line(
        List.of(arrow.bothEnds() ? from.plus(head.times(0.5)) : from, to.minus(head.times(0.5))),
        style.lineMm(),
        style.line(),
        style.dashMm());
    pen.fill(List.of(head(to, head)), style.line());
    if (arrow.bothEnds()) {
      pen.fill(List.of(head(from, head.times(-1))), style.line());
    }
  }

  private static List<Vec2> head(Vec2 tip, Vec2 head) {
    Vec2 side = new Vec2(-head.y(), head.x()).times(SLENDER);
    Vec2 back = tip.minus(head);
    return List.of(tip, back.plus(side), back.minus(side));
  }

  private void label(PlanItem.Label label) {
    double height = label.sizeMm();
    double points = height / CAPITAL_SHARE * Pen.POINTS_PER_MM;
    String text = fonts.writable(label.text());
    double width = fonts.width(text, false, points);
    double start =
        switch (label.anchor()) {
          case START -> 0;
          case END -> -width;
          case MIDDLE, ABOVE, BELOW -> -width / 2;
        };
    double base =
        switch (label.anchor()) {
          case ABOVE -> GAP * height;
          case BELOW -> -(1 + GAP) * height;
          case START, MIDDLE, END -> -height / 2;
        };
    Vec2 at = on(label.at());
    double turn = Math.toRadians(label.turn());
    Vec2 along = new Vec2(StrictMath.cos(turn), StrictMath.sin(turn));
    label
        .style()
        .fill()
        .ifPresent(
            rgb -> {
              double space = PLATE_SPACE * height;
              List<Vec2> plate =
                  List.of(
                      turned(at, along, start - space, base - space),
                      turned(at, along, start + width + space, base - space),
                      turned(at, along, start + width + space, base + height + space),
                      turned(at, along, start - space, base + height + space));
              pen.fill(List.of(plate), rgb);
              pen.outline(plate, label.style().lineMm(), label.style().line(), List.of());
            });
    Vec2 origin = turned(at, along, start, base);
    pen.text(origin.x(), origin.y(), text, false, points, label.style().line(), label.turn());
  }

  /** A place beside another on paper: y up in the text, y down on the page. */
  private static Vec2 turned(Vec2 at, Vec2 along, double x, double y) {
    return new Vec2(
        at.x() + x * along.x() - y * along.y(), at.y() - (x * along.y() + y * along.x()));
  }

  private List<Vec2> on(List<Vec2> world) {
    return world.stream().map(this::on).toList();
  }

  private Vec2 on(Vec2 world) {
    return new Vec2(
        left + (world.x() - sheet.low().x()) * perMetre(),
        top + (sheet.high().y() - world.y()) * perMetre());
  }

  private double perMetre() {
    return MM_PER_METRE / sheet.denominator();
  }
}
