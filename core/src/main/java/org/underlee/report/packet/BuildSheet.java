package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.CAUTION;
import static org.underlee.report.packet.Block.Tone.PLAIN;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.kit.DrainValue;
import org.underlee.kit.DrapeValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitNumber;
import org.underlee.kit.PanValue;
import org.underlee.kit.SheetValue;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.report.packet.Block.Tick;

/** The order of the work, each step with its check. */
record BuildSheet(Job job) {

  /**
   * A step.
   *
   * @param name in the phrases as {@code build.rails} and {@code build.rails.check}
   * @param numbers of the kit that it speaks of
   */
  private record Step(String name, List<String> numbers) {
    Step(String name) {
      this(name, List.of());
    }
  }

  Sheet sheet() {
    List<Tick> ticks = new ArrayList<>();
    for (Step step : steps()) {
      String key = "build." + step.name();
      ticks.add(
          new Tick(
              "build-" + step.name(),
              (ticks.size() + 1) + ". " + job.say(key, step.numbers().toArray()),
              job.say(key + ".check", step.numbers().toArray())));
    }
    return new Sheet(
        "build",
        job.say("build.title"),
        false,
        List.of(
            new Block.Text(job.say("build.how"), PLAIN),
            new Block.Text(job.say("cover.caution.site"), CAUTION),
            new Block.Ticks(ticks)));
  }

  private List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    steps.add(new Step("site"));
    steps.add(new Step("measure"));
    steps.add(new Step("mark"));
    steps.addAll(
        switch (job.kit().family()) {
          case PANS -> pans();
          case DRAPE -> drape();
          case SHEET -> sheets();
        });
    steps.addAll(drain());
    return steps;
  }

  private List<Step> pans() {
    List<Step> steps = new ArrayList<>();
    steps.add(
        new Step(
            "rails",
            lengths(
                PanValue.RAIL_FASTENER_SPACING,
                PanValue.JOIST_EDGE_DISTANCE,
                DrainValue.HANGER_END)));
    if (has(PartKind.PLY_STRIP)) {
      steps.add(new Step("strips"));
    }
    if (has(PartKind.HEAD_RAIL)) {
      steps.add(new Step("heads"));
    }
    boolean collared = has(PartKind.COLLAR_PIECE);
    steps.add(new Step(collared ? "collared" : "pans", lengths(PanValue.PAN_LAP)));
    if (collared) {
      steps.add(new Step("collars"));
    }
    if (has(PartKind.RIDGE_CAP)) {
      steps.add(new Step("ridge"));
    }
    return steps;
  }

  private List<Step> drape() {
    return List.of(
        new Step("boards"),
        new Step(
            "troughs", lengths(DrapeValue.FLANGE, DrapeValue.TROUGH_SAG, DrapeValue.TROUGH_TAIL)),
        new Step(
            "caps",
            lengths(
                DrapeValue.CAP_FASTENER_SPACING, DrainValue.HANGER_END, DrapeValue.CAP_OVERHANG)));
  }

  private List<Step> sheets() {
    List<Step> steps = new ArrayList<>();
    steps.add(new Step("battens", lengths(SheetValue.BATTEN_HANGER_GRIP)));
    steps.add(new Step("sheets", lengths(SheetValue.SHEET_LAP)));
    if (has(PartKind.RIDGE_CAP)) {
      steps.add(new Step("ridgeOnSheets", lengths(DrainValue.FLASHING_LAP)));
    }
    steps.add(new Step("screws", lengths(SheetValue.SHEET_SCREW_SPACING)));
    return steps;
  }

  private List<String> lengths(KitNumber... numbers) {
    return Stream.of(numbers).map(n -> job.length(job.kit().get(n))).toList();
  }

  private List<Step> drain() {
    Kit kit = job.kit();
    List<Step> steps = new ArrayList<>();
    steps.add(
        new Step(
            "gutter",
            List.of(
                job.writing().fall(kit.gutterFall()),
                job.length(kit.get(DrainValue.GUTTER_BACK_GAP)))));
    if (has(PartKind.FLASHING)) {
      String labels =
          job.design().layout().parts().stream()
              .filter(p -> p.kind() == PartKind.FLASHING)
              .map(Part::label)
              .collect(Collectors.joining(", "));
      steps.add(
          new Step("flashings", List.of(job.length(kit.get(DrainValue.FLASHING_LAP)), labels)));
    }
    steps.add(new Step("downspouts"));
    steps.add(new Step("hose"));
    steps.add(new Step("clean", List.of(job.say("pieces." + kit.family().word()))));
    return steps;
  }

  private boolean has(PartKind kind) {
    return job.design().layout().parts().stream().anyMatch(p -> p.kind() == kind);
  }
}
