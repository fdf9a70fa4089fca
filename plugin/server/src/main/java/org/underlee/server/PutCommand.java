package org.underlee.server;

import java.nio.file.Path;
import java.util.Optional;
import org.underlee.command.ExitCode;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

@Command(
    name = "put",
    description = "Adds a file as a new revision.",
    mixinStandardHelpOptions = true)
final class PutCommand extends AtProject {
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
    Optional<Revision> from = base.map(n -> server.revision(found, n));
    Revision landed = server.checkIn(found, from, file, comment, progress("Sent"));
    say(file + " is revision " + landed.number() + " of \"" + found.name() + "\".");
    return ExitCode.CLEAN;
  }
}
