package org.underlee.server;

import java.nio.file.Path;
import java.util.Optional;
import org.underlee.command.ExitCode;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
    name = "get",
    description = "Brings a revision into a file.",
    mixinStandardHelpOptions = true)
final class GetCommand extends AtProject {
  @Option(names = "--revision", paramLabel = "N", description = "The newest when not given.")
  Optional<Integer> revision = Optional.empty();

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "<project>.r<revision>.ifc when not given.")
  Optional<Path> out = Optional.empty();

  @Override
  int work() {
    fetch(revision, out);
    return ExitCode.CLEAN;
  }
}
