package org.underlee.command;

import java.util.List;
import java.util.concurrent.Callable;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.report.CompareJson;
import org.underlee.report.CompareText;
import org.underlee.run.Comparison;
import org.underlee.run.Preference;
import org.underlee.run.Survey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "compare",
    description = "Shows the arrangements that can keep a deck dry, side by side.",
    mixinStandardHelpOptions = true)
final class CompareCommand implements Callable<Integer> {
  @Mixin ModelOptions model = new ModelOptions();

  @Option(
      names = "--kit",
      paramLabel = "KIT",
      arity = "1..*",
      description = "Kits to compare, by name or file; all that are built in when not given.")
  List<String> kits = List.of();

  @Option(
      names = "--fall",
      paramLabel = "1:RUN",
      arity = "1..*",
      converter = KitOption.FallConverter.class,
      description = "Falls to try besides each kit's own.")
  List<KitOption.Fall> falls = List.of();

  @Option(
      names = "--prefer",
      paramLabel = "WHAT",
      split = ",",
      description = "What counts first among equally dry ones: cuts, headroom, pieces, fall.")
  List<Preference> prefer = List.of();

  @Mixin BuyingOptions buying = new BuyingOptions();

  @Mixin WishOptions wishes = new WishOptions();

  @Override
  public Integer call() {
    Survey survey = model.survey();
    List<Kit> chosen =
        kits.isEmpty() ? KitReader.allBuiltIn() : kits.stream().map(KitReader::named).toList();
    Comparison comparison =
        Comparison.of(
            survey,
            wishes.of(model.scope()),
            chosen,
            falls.stream().map(KitOption.Fall::run).toList(),
            prefer,
            buying.buying(chosen));
    model.print(
        model.json
            ? CompareJson.write(comparison)
            : CompareText.write(comparison, model.unitsFor(survey)));
    return model.report(survey.findings(), model.unitsFor(survey));
  }
}
