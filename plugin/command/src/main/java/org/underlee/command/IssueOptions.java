package org.underlee.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.underlee.clash.IssueRegister;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.report.ClashCsv;
import org.underlee.report.ClashJson;
import org.underlee.run.Checked;
import org.underlee.run.Coordination;
import org.underlee.run.DeckRun;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What is in the assembly's way: looked at when one of these or {@code --services} is given. */
final class IssueOptions {
  @Mixin KitOption kit = new KitOption();

  @Option(
      names = "--issues",
      paramLabel = "FILE",
      description = {
        "Follow issues in this JSON file: it is read if there is one, and written again. An issue"
            + " is accepted by writing the reason into it."
      })
  Optional<Path> issues = Optional.empty();

  @Option(
      names = "--csv",
      paramLabel = "FILE",
      description = "Also write what is in the way as a table.")
  Optional<Path> csv = Optional.empty();

  private boolean areWanted(ModelOptions model) {
    return !model.services.isEmpty()
        || issues.isPresent()
        || csv.isPresent()
        || model.failOn.filter(f -> f == FailOn.NEW).isPresent();
  }

  Optional<Coordination> of(ModelOptions model, Checked checked) {
    return areWanted(model)
        ? Optional.of(DeckRun.coordinate(checked, kit.kit(), before()))
        : Optional.empty();
  }

  private IssueRegister before() {
    return issues.filter(Files::exists).map(IssueOptions::read).orElse(IssueRegister.EMPTY);
  }

  private static IssueRegister read(Path file) {
    String name = file.getFileName().toString();
    try {
      return IssueRegister.read(Files.readString(file), name);
    } catch (IOException e) {
      throw new InputException(
          Place.NOWHERE.inFile(name),
          "the file of issues cannot be read: " + e.getMessage(),
          "Check the path, the rights to the file, and that it is text in UTF-8.");
    }
  }

  /** The files that were asked for; that of the issues last, when all else is written. */
  void write(ModelOptions model, Coordination found) {
    csv.ifPresent(f -> Output.text(model.file, f, ClashCsv.write(found)));
    issues.ifPresent(f -> Output.text(model.file, f, ClashJson.write(found.register())));
  }

  /** Whether an issue is new, where that was asked about. */
  boolean fails(ModelOptions model, Coordination found) {
    return model.failOn.filter(f -> f == FailOn.NEW).isPresent() && found.hasNew();
  }
}
