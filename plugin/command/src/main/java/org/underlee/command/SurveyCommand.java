package org.underlee.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.underlee.report.SurveyJson;
import org.underlee.report.SurveyText;
import org.underlee.run.Survey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "survey",
    description = "Finds the deck framing, its bays and what stands in them.",
    mixinStandardHelpOptions = true)
final class SurveyCommand implements Callable<Integer> {
  @Mixin ModelOptions model = new ModelOptions();

  @Option(names = "--out", paramLabel = "FILE", description = "Write here instead of printing.")
  Optional<Path> out = Optional.empty();

  @Mixin PictureOptions picture = new PictureOptions();

  @Override
  public Integer call() {
    picture.requireKnown(model);
    Survey all = model.survey();
    Survey survey = model.deck.map(all::only).orElse(all);
    String text =
        model.json ? SurveyJson.write(survey) : SurveyText.write(survey, model.unitsFor(survey));
    out.ifPresentOrElse(f -> model.files().text(f, text), () -> model.print(text));
    picture.draw(model, survey, Optional.empty());
    return model.report(survey.findings(), model.unitsFor(survey));
  }
}
