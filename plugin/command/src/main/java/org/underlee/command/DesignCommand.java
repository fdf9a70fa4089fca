package org.underlee.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.report.DesignJson;
import org.underlee.report.DesignText;
import org.underlee.report.TakeoffCsv;
import org.underlee.report.TakeoffJson;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.Survey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

@Command(
    name = "design",
    description = "Lays out the drainage and writes it into a copy of the model.",
    mixinStandardHelpOptions = true)
final class DesignCommand implements Callable<Integer> {
  @Mixin ModelOptions model = new ModelOptions();

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "The drained copy; <name>.drained.ifc beside the model when not given.")
  Optional<Path> out = Optional.empty();

  @Option(names = "--kit", paramLabel = "KIT", description = "A kit's name or file.")
  Optional<String> kit = Optional.empty();

  @Option(
      names = "--takeoff",
      paramLabel = "FILE",
      description = "Also write what to buy and cut: .csv or .json.")
  Optional<Path> takeoff = Optional.empty();

  @Option(
      names = "--picture",
      paramLabel = "FILE",
      description = "Draw the drained deck: .png in 3-D, .svg in plan.")
  Optional<Path> picture = Optional.empty();

  @Option(
      names = "--view",
      description = "Where the 3-D picture is taken from: ${COMPLETION-CANDIDATES}.")
  Output.View view = Output.View.BELOW;

  @Override
  public Integer call() {
    takeoff.ifPresent(this::requireKnown);
    picture.ifPresent(f -> Output.requireKnownPicture(model, f));
    Survey survey = DeckRun.survey(model.file);
    Kit chosen = kit.map(KitReader::named).orElseGet(KitReader::builtIn);
    Design design = DeckRun.design(survey, model.scope(), chosen);
    Path target = out.orElseGet(this::beside);
    DeckRun.save(design, model.file, target);
    takeoff.ifPresent(f -> Output.text(model.file, f, takeoffText(f, design)));
    picture.ifPresent(f -> Output.picture(model, f, view, survey, Optional.of(design.layout())));
    model.print(
        model.json ? DesignJson.write(design) : DesignText.write(design, model.unitsFor(survey)));
    model.say(outcome(design, target));
    return model.report(design.findings());
  }

  private static String outcome(Design design, Path target) {
    int parts = design.layout().parts().size();
    return parts == 0
        ? "Nothing was laid out; " + target + " is the model as it was."
        : String.format(
            Locale.ROOT,
            "Wrote %s: %d parts in %d new instances; the designer's bytes are unchanged.",
            target,
            parts,
            design.written().instances());
  }

  private Path beside() {
    String name = model.file.getFileName().toString();
    String stem =
        name.toLowerCase(Locale.ROOT).endsWith(".ifc")
            ? name.substring(0, name.length() - 4)
            : name;
    return model.file.resolveSibling(stem + ".drained.ifc");
  }

  private void requireKnown(Path file) {
    if (ModelOptions.ending(file, List.of(".csv", ".json")).isEmpty()) {
      throw new ParameterException(
          model.spec.commandLine(), "--takeoff " + file + ": name a .csv or .json file");
    }
  }

  private static String takeoffText(Path file, Design design) {
    return ModelOptions.ending(file, List.of(".csv")).isEmpty()
        ? TakeoffJson.write(design)
        : TakeoffCsv.write(design.takeoff());
  }
}
