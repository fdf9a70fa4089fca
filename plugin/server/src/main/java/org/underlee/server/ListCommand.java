package org.underlee.server;

import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.underlee.command.ExitCode;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
    name = "list",
    description = "Lists the projects, or the revisions of one.",
    mixinStandardHelpOptions = true)
final class ListCommand extends AtServer {
  @Option(names = "--project", paramLabel = "NAME", description = "The project to list.")
  Optional<String> project = Optional.empty();

  @Override
  int work() {
    ModelServer server = server();
    project.ifPresentOrElse(
        name -> server.revisions(server.project(name)).forEach(this::print),
        () -> server.projects().forEach(this::print));
    out().flush();
    return ExitCode.CLEAN;
  }

  private void print(Project found) {
    int count = found.revisions().size();
    out()
        .println(
            found.name()
                + "  "
                + found.schema()
                + "  "
                + (count == 0 ? "empty" : count == 1 ? "1 revision" : count + " revisions"));
  }

  private void print(Revision revision) {
    out()
        .println(
            revision.number()
                + "  "
                + revision.at().truncatedTo(ChronoUnit.SECONDS)
                + "  "
                + revision.user()
                + "  "
                + revision.instances()
                + " instances  "
                + revision.comment());
  }
}
