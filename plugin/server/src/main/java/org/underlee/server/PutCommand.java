package org.underlee.server;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.underlee.command.ExitCode;
import org.underlee.command.Verb;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

@Command(
    name = "put",
    description = "Adds a file as a new revision.",
    mixinStandardHelpOptions = true)
final class PutCommand extends AtProject {
  private final Verb.Program underlee;

  @Parameters(index = "1", paramLabel = "FILE", description = "The model, an IFC file.")
  Path file = Path.of("");

  @Option(
      names = "--base",
      paramLabel = "N",
      description = "The revision that the file was made from; none for an empty project.")
  Optional<Integer> base = Optional.empty();

  @Option(
      names = "--comment",
      paramLabel = "TEXT",
      required = true,
      description = "Says what changed.")
  String comment = "";

  @Option(
      names = "--kit",
      paramLabel = "KIT",
      description = "The kit's file, where the assembly in it was made with one of your own.")
  Optional<String> kit = Optional.empty();

  PutCommand(Verb.Program underlee) {
    this.underlee = underlee;
  }

  @Override
  int work() {
    ModelServer server = server();
    Project found = server.project(project);
    if (base.isEmpty() && found.newest().isPresent()) {
      throw new ParameterException(
          spec.commandLine(),
          "say with --base which revision the file was made from; the newest is "
              + server.newest(found).number());
    }
    Landing.Landed landed =
        base.map(n -> server.revision(found, n))
            .map(from -> land(new Landing.From(server, found, from)))
            .orElseGet(() -> first(server, found));
    say(landed.told(found));
    return ExitCode.CLEAN;
  }

  private Landing.Landed first(ModelServer server, Project empty) {
    return new Landing.Landed(
        file, server.checkIn(empty, Optional.empty(), file, comment, progress("Sent")));
  }

  private Landing.Landed land(Landing.From from) {
    List<String> options = kit.map(k -> List.of("--kit", k)).orElse(List.of());
    return new Landing(this, underlee, () -> options)
        .land(from, file, (drained, on) -> says(from, on));
  }

  private String says(Landing.From from, Revision on) {
    int made = from.revision().number();
    return made == on.number()
        ? comment
        : comment + "; made from revision " + made + ", taken over onto " + on.number();
  }
}
