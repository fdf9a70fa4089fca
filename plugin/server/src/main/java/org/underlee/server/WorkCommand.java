package org.underlee.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.command.ExitCode;
import org.underlee.command.Verb;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Unmatched;

/** A verb for files, run on a revision; its own options follow. */
abstract class WorkCommand extends AtProject {
  private final Verb.Program underlee;

  @Option(names = "--revision", paramLabel = "N", description = "The newest when not given.")
  Optional<Integer> revision = Optional.empty();

  @Option(
      names = "--with",
      paramLabel = "NAME",
      description = "Another project whose newest revision is looked at for services; repeatable.")
  List<String> with = List.of();

  @Unmatched List<String> further = new ArrayList<>();

  WorkCommand(Verb.Program underlee) {
    this.underlee = underlee;
  }

  /** Runs the verb on a file with the options that were given for it. */
  int run(String verb, Path file, List<String> more, Fetched base) {
    List<String> args = new ArrayList<>(List.of(verb, file.toString()));
    args.addAll(more);
    args.addAll(further);
    List<Path> services = with.stream().map(name -> service(base.server(), name)).toList();
    if (!services.isEmpty()) {
      args.add("--services");
      services.forEach(s -> args.add(s.toString()));
    }
    return underlee.run(out(), spec.commandLine().getErr(), args.toArray(String[]::new));
  }

  private Path service(ModelServer server, String name) {
    Project other = server.project(name);
    Revision newest = server.newest(other);
    Path file = folder.resolve(fileOf(other, newest));
    save(file, server.download(other, newest, progress("Received")));
    return file;
  }

  @Command(
      name = "survey",
      description = "Surveys a revision; options of survey may follow.",
      mixinStandardHelpOptions = true)
  static final class Survey extends WorkCommand {
    Survey(Verb.Program underlee) {
      super(underlee);
    }

    @Override
    int work() {
      Fetched base = fetch(revision, Optional.empty());
      return run("survey", base.file(), List.of(), base);
    }
  }

  @Command(
      name = "design",
      description = {
        "Lays out the drainage for a revision and adds the result as a new one; options of design"
            + " may follow."
      },
      mixinStandardHelpOptions = true)
  static final class Design extends WorkCommand {
    @Option(
        names = "--comment",
        paramLabel = "TEXT",
        description = "Added to what the revision's comment says of itself.")
    Optional<String> comment = Optional.empty();

    Design(Verb.Program underlee) {
      super(underlee);
    }

    @Override
    int work() {
      Fetched base = fetch(revision, Optional.empty());
      Path drained = drained(base.file());
      int code = run("design", base.file(), List.of("--out", drained.toString()), base);
      if (code != ExitCode.CLEAN) {
        say("Nothing was put on the server.");
        return code;
      }
      String says =
          Comments.ofAssembly(Comments.parts(drained), base.revision().number())
              + comment.map(c -> "; " + c).orElse("");
      Revision landed =
          base.server()
              .checkIn(
                  base.project(), Optional.of(base.revision()), drained, says, progress("Sent"));
      say(drained + " is revision " + landed.number() + " of \"" + base.project().name() + "\".");
      return ExitCode.CLEAN;
    }

    private static Path drained(Path file) {
      String name = file.getFileName().toString();
      return file.resolveSibling(
          name.substring(0, name.length() - ".ifc".length()) + ".drained.ifc");
    }
  }
}
