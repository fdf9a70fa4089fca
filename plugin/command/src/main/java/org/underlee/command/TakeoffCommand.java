package org.underlee.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.report.DesignText;
import org.underlee.report.TakeoffCsv;
import org.underlee.report.TakeoffJson;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "takeoff",
    description = "Lists what to buy and what to cut, without writing a model.",
    mixinStandardHelpOptions = true)
final class TakeoffCommand implements Callable<Integer> {
  @Mixin ModelOptions model = new ModelOptions();

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "Write here instead of printing; .csv and .json set the format.")
  Optional<Path> out = Optional.empty();

  @Option(names = "--kit", paramLabel = "KIT", description = "A kit's name or file.")
  Optional<String> kit = Optional.empty();

  @Override
  public Integer call() {
    Kit chosen = kit.map(KitReader::named).orElseGet(KitReader::builtIn);
    Design design = DeckRun.design(DeckRun.survey(model.file), model.scope(), chosen);
    String text = text(design);
    out.ifPresentOrElse(f -> Output.text(model.file, f, text), () -> model.print(text));
    return model.report(design.findings());
  }

  private String text(Design design) {
    String ending = out.map(f -> ModelOptions.ending(f, List.of(".csv", ".json"))).orElse("");
    if (ending.equals(".csv")) {
      return TakeoffCsv.write(design.takeoff());
    }
    return model.json || ending.equals(".json")
        ? TakeoffJson.write(design)
        : DesignText.takeoff(design, model.unitsFor(design.survey()));
  }
}
