package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Outline;
import org.underlee.geom.Vec2;

/** Draws a plan as a raster picture, with built-in letters. Nothing in it can be picked. */
public final class PlanRaster {
  private static final int FINENESS = 3;

  /** Thinner lines would fade out, in samples. */
  private static final double THINNEST = FINENESS;

  /** No pixel more for a size that is whole but for rounding. */
  private static final double ROUNDING = 1e-6;

  private static final int CIRCLE_SIDES = 64;

  private final PlanSheet sheet;
  private final double samplesPerMm;
  private final FlatPen pen;
  private final Ink ink;

  private PlanRaster(PlanSheet sheet, double samplesPerMm, FlatPen pen, Ink ink) {
    this.ink = ink;
    this.sheet = sheet;
    this.samplesPerMm = samplesPerMm;
    this.pen = pen;
  }

  /**
   * The drawing on a sheet as a picture.
   *
   * @param pixelsPerMm of paper; 4 is about 100 to the inch
   * @param threads how many threads draw; the picture is the same for any number
   * @throws IllegalArgumentException when the picture would be larger than {@link RasterSettings}
   *     allows
   */
  public static Image draw(PlanDrawing drawing, PlanSheet sheet, double pixelsPerMm, int threads) {
    return draw(drawing, sheet, pixelsPerMm, threads, Ink.DAY);
  }

  /** As {@link #draw(PlanDrawing, PlanSheet, double, int)}, with other paper and pens. */
  public static Image draw(
      PlanDrawing drawing, PlanSheet sheet, double pixelsPerMm, int threads, Ink ink) {
    RasterSettings settings =
        new RasterSettings(
            pixels(sheet.widthMm() * pixelsPerMm),
            pixels(sheet.heightMm() * pixelsPerMm),
            FINENESS,
            threads);
    ScreenTriangles triangles =
        new ScreenTriangles(settings.width() * FINENESS, settings.height() * FINENESS);
    PlanRaster raster = new PlanRaster(sheet, pixelsPerMm * FINENESS, new FlatPen(triangles), ink);
    drawing.items().forEach(raster::item);
    BandPainter painter = new BandPainter(settings, 0, ink.of(Palette.PAPER), triangles);
    try (Workers workers = new Workers(threads)) {
      workers.run(painter.bands(), band -> painter.paint(band, (b, layer, more) -> {}));
    }
    return painter.image();
  }

  private static int pixels(double size) {
    return (int) Math.ceil(size - ROUNDING);
  }

  private void item(PlanItem item) {
    PlanStyle style = item.style();
    if (item instanceof PlanItem.Area area) {
      area(area.outline(), style);
    } else if (item instanceof PlanItem.Line line) {
      stroke(line.points().stream().map(this::place).toList(), false, style);
    } else if (item instanceof PlanItem.Arrow arrow) {
      ArrowOnPaper onPaper = ArrowOnPaper.of(arrow, sheet);
      stroke(onPaper.shaft().stream().map(this::samples).toList(), false, style);
      onPaper.heads().forEach(head -> fill(head, style.line()));
    } else if (item instanceof PlanItem.Circle circle) {
      Vec2 c = circle.centre();
      area(Outline.of(Outline.circle(c.x(), c.y(), circle.radius(), CIRCLE_SIDES)), style);
    } else if (item instanceof PlanItem.Label label) {
      label(label);
    }
  }

  private void area(Outline outline, PlanStyle style) {
    List<Vec2> outer = outline.outer().stream().map(this::place).toList();
    List<List<Vec2>> holes =
        outline.holes().stream().map(h -> h.stream().map(this::place).toList()).toList();
    style.fill().ifPresent(rgb -> pen.area(new Outline(outer, holes), ink.of(rgb)));
    stroke(outer, true, style);
    holes.forEach(hole -> stroke(hole, true, style));
  }

  private void fill(List<Vec2> onPaper, int rgb) {
    pen.area(Outline.of(onPaper.stream().map(this::samples).toList()), ink.of(rgb));
  }

  private void label(PlanItem.Label label) {
    LabelBox box = LabelBox.of(label);
    Vec2 at = sheet.onPaper(label.at());
    label
        .style()
        .fill()
        .ifPresent(
            rgb -> {
              List<Vec2> plate = LabelBox.plate(label, sheet);
              fill(plate, rgb);
              stroke(plate.stream().map(this::samples).toList(), true, label.style());
            });
    Vec2 along = new Vec2(box.along().x(), -box.along().y());
    Vec2 origin = samples(below(at, box.origin()));
    pen.text(
        label.text(), origin, along, box.height() * samplesPerMm, ink.of(label.style().line()));
  }

  private void stroke(List<Vec2> points, boolean closed, PlanStyle style) {
    double width = Math.max(THINNEST, style.lineMm() * samplesPerMm);
    if (style.dashMm().isEmpty()) {
      pen.line(points, closed, width, false, ink.of(style.line()));
      return;
    }
    List<Vec2> all = new ArrayList<>(points);
    if (closed) {
      all.add(points.get(0));
    }
    List<Double> pattern = style.dashMm().stream().map(mm -> mm * samplesPerMm).toList();
    for (List<Vec2> dash : Dashes.of(all, pattern)) {
      pen.line(dash, false, width, false, ink.of(style.line()));
    }
  }

  private Vec2 place(Vec2 world) {
    return samples(sheet.onPaper(world));
  }

  private Vec2 samples(Vec2 onPaper) {
    return onPaper.times(samplesPerMm);
  }

  /** A place on paper plus an offset whose y is up. */
  private static Vec2 below(Vec2 at, Vec2 up) {
    return new Vec2(at.x() + up.x(), at.y() - up.y());
  }
}
