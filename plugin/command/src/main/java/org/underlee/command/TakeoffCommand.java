package org.underlee.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.underlee.report.DesignText;
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
      description = "Write here instead of printing; .csv, .xlsx and .json set the format.")
  Optional<Path> out = Optional.empty();

  @Mixin KitOption kit = new KitOption();

  @Mixin WishOptions wishes = new WishOptions();

  @Override
  public Integer call() {
    DeckRun.requireWritable(model.file);
    Design design = DeckRun.design(model.survey(), wishes.of(model.scope()), kit.kit());
    out.ifPresentOrElse(f -> write(f, design), () -> model.print(text(design)));
    return model.report(design.findings(), model.unitsFor(design.survey()));
  }

  private void write(Path file, Design design) {
    if (Output.isTakeoffFormat(file)) {
      Output.takeoff(model, file, design);
    } else {
      Output.text(model.file, file, text(design));
    }
  }

  private String text(Design design) {
    return model.json
        ? TakeoffJson.write(design)
        : DesignText.takeoff(design, model.unitsFor(design.survey()));
  }
}
