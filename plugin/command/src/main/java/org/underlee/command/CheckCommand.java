package org.underlee.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.underlee.report.CheckJson;
import org.underlee.report.CheckText;
import org.underlee.run.Checked;
import org.underlee.run.DeckRun;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "check",
    description = "Checks the assembly in a drained model as it stands there.",
    mixinStandardHelpOptions = true)
final class CheckCommand implements Callable<Integer> {
  @Mixin ModelOptions model = new ModelOptions();

  @Option(names = "--out", paramLabel = "FILE", description = "Write here instead of printing.")
  Optional<Path> out = Optional.empty();

  @Mixin StandardOptions standard = new StandardOptions();

  @Override
  public Integer call() {
    if (standard.asked()) {
      return standard.check(model, out);
    }
    Checked checked = DeckRun.check(model.file, model.request(), model.deck);
    String text =
        model.json
            ? CheckJson.write(checked)
            : CheckText.write(checked, model.unitsFor(checked.survey()));
    out.ifPresentOrElse(f -> Output.text(model.file, f, text), () -> model.print(text));
    return model.report(checked.findings(), model.unitsFor(checked.survey()));
  }
}
