package org.underlee.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.underlee.kit.KitReader;
import org.underlee.report.ResyncJson;
import org.underlee.report.ResyncText;
import org.underlee.run.DeckRun;
import org.underlee.run.Resync;
import org.underlee.run.Resynced;
import org.underlee.units.Lengths.UnitSystem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

@Command(
    name = "resync",
    description = "Takes the assembly over into a new export of the model, and says what changed.",
    mixinStandardHelpOptions = true)
final class ResyncCommand implements Callable<Integer> {
  @Mixin ModelOptions model = new ModelOptions();

  @Option(
      names = "--from",
      paramLabel = "FILE",
      required = true,
      description = "The old drained model, whose decisions are kept.")
  Path from = Path.of("");

  @Option(
      names = "--out",
      paramLabel = "FILE",
      required = true,
      description = "The new export with the assembly.")
  Path out = Path.of("");

  @Option(
      names = "--kit",
      paramLabel = "KIT",
      description = "The kit's file, where the assembly was made with one of your own.")
  Optional<String> kit = Optional.empty();

  @Option(
      names = "--changes",
      paramLabel = "FILE",
      description = "Also write the table of changes: .csv or .json.")
  Optional<Path> changes = Optional.empty();

  @Override
  public Integer call() {
    requireOnlyWhatIsKept();
    changes.ifPresent(this::requireFormat);
    DeckRun.requireWritable(model.file);
    Resynced resynced =
        Resync.of(
            model.file,
            from,
            model.services,
            model.request().overrides(),
            kit.map(KitReader::named));
    UnitSystem units = model.unitsFor(resynced.design().survey());
    String saved = model.files().wrote(out, () -> DeckRun.save(resynced.design(), model.file, out));
    changes.ifPresent(f -> write(f, resynced, units));
    model.print(model.json ? ResyncJson.write(resynced) : ResyncText.write(resynced, units));
    model.say(
        String.format(
            Locale.ROOT, "%s: %d parts.", saved, resynced.design().layout().parts().size()));
    return model.report(resynced.design().findings(), units);
  }

  /** The deck and what is assumed come from the old model. */
  private void requireOnlyWhatIsKept() {
    if (model.deck.isPresent() || model.assume.isPresent()) {
      throw new ParameterException(
          model.spec.commandLine(),
          "--deck and --assume are kept from the old model; run design to choose anew");
    }
  }

  private void requireFormat(Path file) {
    if (ModelOptions.ending(file, List.of(".csv", ".json")).isEmpty()) {
      throw new ParameterException(
          model.spec.commandLine(), "--changes " + file + ": name a .csv or .json file");
    }
  }

  private void write(Path file, Resynced resynced, UnitSystem units) {
    boolean csv = !ModelOptions.ending(file, List.of(".csv")).isEmpty();
    model.files().text(file, csv ? ResyncText.csv(resynced, units) : ResyncJson.write(resynced));
  }
}
