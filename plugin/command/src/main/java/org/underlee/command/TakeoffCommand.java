package org.underlee.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.underlee.drainage.flow.Storm;
import org.underlee.kit.Kit;
import org.underlee.layout.Layout;
import org.underlee.layout.Scope;
import org.underlee.report.DesignText;
import org.underlee.report.TakeoffJson;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.Survey;
import org.underlee.takeoff.Buying;
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
      description = "A .csv, .xlsx or .json file instead of printing.")
  Optional<Path> out = Optional.empty();

  @Mixin KitOption kit = new KitOption();

  @Mixin BuyingOptions buying = new BuyingOptions();

  @Mixin WishOptions wishes = new WishOptions();

  @Mixin RainOption rain = new RainOption();

  @Override
  public Integer call() {
    out.ifPresent(f -> Output.requireTakeoffFormat(model, "--out", f));
    DeckRun.requireWritable(model.file);
    Kit chosen = kit.kit();
    Buying lists = buying.buying(List.of(chosen));
    Survey survey = model.survey();
    Scope scope = wishes.of(model.scope(), survey);
    Storm storm = rain.storm();
    Layout layout = DeckRun.layOut(survey, scope, chosen, storm);
    Design design = DeckRun.design(survey, scope, layout, storm, lists);
    out.ifPresentOrElse(f -> Output.takeoff(model, f, design), () -> model.print(text(design)));
    return model.report(design.findings(), model.unitsFor(design.survey()));
  }

  private String text(Design design) {
    return model.json
        ? TakeoffJson.write(design)
        : DesignText.takeoff(design, model.unitsFor(design.survey()));
  }
}
