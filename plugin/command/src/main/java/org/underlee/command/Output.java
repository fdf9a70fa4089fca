package org.underlee.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.underlee.layout.Layout;
import org.underlee.picture.Camera;
import org.underlee.picture.DeckPlan;
import org.underlee.picture.DeckScene;
import org.underlee.picture.PlanSheet;
import org.underlee.picture.Png;
import org.underlee.picture.RasterSettings;
import org.underlee.picture.Renderer;
import org.underlee.picture.ScaledDrawing;
import org.underlee.picture.Scene;
import org.underlee.picture.Svg;
import org.underlee.report.TakeoffCsv;
import org.underlee.report.TakeoffJson;
import org.underlee.report.TakeoffXlsx;
import org.underlee.run.Design;
import org.underlee.run.Survey;
import org.underlee.units.Lengths.UnitSystem;
import picocli.CommandLine.ParameterException;

/** Writes files beside the model, each whole or not at all. */
final class Output {
  private static final int WIDTH = 1600;
  private static final int HEIGHT = 1000;

  /** An A3 sheet, landscape. */
  private static final double SHEET_WIDTH_MM = 420;

  private static final double SHEET_HEIGHT_MM = 297;
  private static final double MARGIN_MM = 15;

  /** From where a picture is taken. */
  enum View {
    BELOW,
    ABOVE
  }

  private Output() {}

  private static final List<String> TAKEOFF_FORMATS = List.of(".csv", ".xlsx", ".json");

  /** Refuses a takeoff of no known kind, before any work is done for it. */
  static void requireTakeoffFormat(ModelOptions model, String option, Path file) {
    if (ModelOptions.ending(file, TAKEOFF_FORMATS).isEmpty()) {
      throw new ParameterException(
          model.spec.commandLine(), option + " " + file + ": name a .csv, .xlsx or .json file");
    }
  }

  /** The takeoff in the format of the file's ending. */
  static void takeoff(ModelOptions model, Path target, Design design) {
    switch (ModelOptions.ending(target, TAKEOFF_FORMATS)) {
      case ".csv" -> model.files().text(target, TakeoffCsv.write(design));
      case ".xlsx" -> model.files().save(target, TakeoffXlsx.write(design));
      default -> model.files().text(target, TakeoffJson.write(design));
    }
  }

  /** Refuses a picture of no known kind, before any work is done for it. */
  static void requireKnownPicture(ModelOptions model, Path target) {
    if (ModelOptions.ending(target, List.of(".png", ".svg")).isEmpty()) {
      throw new ParameterException(
          model.spec.commandLine(), "--picture " + target + ": name a .png (3-D) or .svg (plan)");
    }
  }

  /** A 3-D picture as PNG, else the plan as SVG, by the file's ending. */
  static void picture(
      ModelOptions model, Path target, View view, Survey survey, Optional<Layout> layout) {
    if (ModelOptions.ending(target, List.of(".png")).isEmpty()) {
      model.files().text(target, svg(survey, layout, model.unitsFor(survey)));
    } else {
      model.files().save(target, png(view, survey, layout));
    }
  }

  private static byte[] png(View view, Survey survey, Optional<Layout> layout) {
    Scene scene = DeckScene.of(survey.framing(), survey.model().elements(), layout);
    RasterSettings settings =
        RasterSettings.of(WIDTH, HEIGHT)
            .withThreads(Math.max(1, Runtime.getRuntime().availableProcessors()));
    Camera camera =
        view == View.BELOW
            ? DeckScene.fromBelow(survey.framing(), layout, scene, settings.aspect())
            : DeckScene.fromAbove(survey.framing(), scene, settings.aspect());
    return Png.encode(Renderer.draw(scene, camera, settings));
  }

  private static String svg(Survey survey, Optional<Layout> layout, UnitSystem units) {
    ScaledDrawing drawing =
        DeckPlan.of(survey.bays(), layout, units, survey.source().file())
            .orElseGet(() -> DeckPlan.empty(survey.source().file()));
    PlanSheet sheet =
        PlanSheet.fitting(
            drawing,
            SHEET_WIDTH_MM,
            SHEET_HEIGHT_MM,
            MARGIN_MM,
            units == UnitSystem.METRIC ? PlanSheet.METRIC_SCALES : PlanSheet.INCH_SCALES);
    return Svg.write(drawing.at(sheet.denominator()), sheet);
  }
}
