package org.underlee.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.underlee.kit.KitReader;
import org.underlee.report.CheckJson;
import org.underlee.report.CheckText;
import org.underlee.report.ClashText;
import org.underlee.run.Checked;
import org.underlee.run.Coordination;
import org.underlee.run.DeckRun;
import org.underlee.units.Lengths.UnitSystem;
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

  @Mixin KitOption kit = new KitOption();

  @Mixin IssueOptions issues = new IssueOptions();

  @Mixin StandardOptions standard = new StandardOptions();

  @Override
  public Integer call() {
    if (standard.asked()) {
      return standard.check(model, out);
    }
    Checked checked =
        DeckRun.check(model.file, model.request(), model.deck, kit.name.map(KitReader::named));
    Optional<Coordination> found = issues.of(model, checked, kit.kit());
    String text = model.json ? CheckJson.write(checked, found) : text(checked, found);
    out.ifPresentOrElse(f -> model.files().text(f, text), () -> model.print(text));
    found.ifPresent(c -> issues.write(model, c));
    int code = model.report(checked.findings(), model.unitsFor(checked.survey()));
    return found.filter(c -> issues.fails(model, c)).isPresent() ? ExitCode.FINDINGS : code;
  }

  private String text(Checked checked, Optional<Coordination> found) {
    UnitSystem units = model.unitsFor(checked.survey());
    return CheckText.write(checked, units) + found.map(c -> ClashText.write(c, units)).orElse("");
  }
}
