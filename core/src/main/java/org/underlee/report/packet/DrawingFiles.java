package org.underlee.report.packet;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.underlee.picture.PlanDrawing;
import org.underlee.picture.PlanRaster;
import org.underlee.picture.PlanSheet;
import org.underlee.picture.Png;
import org.underlee.picture.ScaledDrawing;
import org.underlee.picture.Svg;
import org.underlee.report.packet.dxf.Dxf;

/** Every drawing of a packet as a file of its own: SVG, PNG, and DXF where it is true to size. */
public final class DrawingFiles {
  /** An A3 sheet on its side, less its margins. */
  private static final double WIDTH_MM = 390;

  private static final double HEIGHT_MM = 267;
  private static final double MARGIN_MM = 5;

  /** About 100 to the inch. */
  private static final double PIXELS_PER_MM = 4;

  private DrawingFiles() {}

  /** How each file is written, by its name. */
  static Map<String, Supplier<byte[]>> of(Packet packet) {
    Map<String, Supplier<byte[]>> files = new LinkedHashMap<>();
    for (Sheet sheet : packet.sheets()) {
      for (Block block : sheet.blocks()) {
        if (block instanceof Block.Drawing drawing) {
          PlanSheet paper = paper(drawing.plan(), packet.writing());
          write(files, drawing.id(), drawing.plan(), paper);
          drawing.drafted().ifPresent(p -> dxf(files, drawing.id(), p, paper(p, packet.writing())));
        } else if (block instanceof Block.Template template) {
          PlanSheet paper = PlanSheet.of(template.plan(), 1, 1);
          write(files, template.id(), template.plan(), paper);
          dxf(files, template.id(), template.plan(), paper);
        } else if (block instanceof Block.Picture picture) {
          files.put("drawings/" + picture.id() + ".png", () -> Png.encode(picture.image()));
        }
      }
    }
    return files;
  }

  private static void write(
      Map<String, Supplier<byte[]>> files, String id, ScaledDrawing scaled, PlanSheet paper) {
    PlanDrawing plan = scaled.at(paper.denominator());
    String name = "drawings/" + id;
    files.put(name + ".svg", () -> Svg.write(plan, paper).getBytes(StandardCharsets.UTF_8));
    files.put(name + ".png", () -> Png.encode(PlanRaster.draw(plan, paper, PIXELS_PER_MM, 1)));
  }

  private static void dxf(
      Map<String, Supplier<byte[]>> files, String id, ScaledDrawing plan, PlanSheet paper) {
    files.put(
        "drawings/" + id + ".dxf",
        () ->
            Dxf.write(plan.at(paper.denominator()), paper.denominator())
                .getBytes(StandardCharsets.US_ASCII));
  }

  /** A drawing on its own, at a usual scale. */
  public static String svg(ScaledDrawing plan, Writing writing) {
    PlanSheet paper = paper(plan, writing);
    return Svg.write(plan.at(paper.denominator()), paper);
  }

  /** The sheet that {@link #svg} sets a drawing on. */
  public static PlanSheet paper(ScaledDrawing plan, Writing writing) {
    List<Integer> scales = writing.isMetric() ? PlanSheet.METRIC_SCALES : PlanSheet.INCH_SCALES;
    return PlanSheet.fitting(plan, WIDTH_MM, HEIGHT_MM, MARGIN_MM, scales);
  }
}
