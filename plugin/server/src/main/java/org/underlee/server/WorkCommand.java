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
    args.addAll(services(base.server()));
    return underlee.run(out(), err(), args.toArray(String[]::new));
  }

  /** A way into the project for what was run. */
  Landing landing(ModelServer server) {
    return new Landing(this, underlee, () -> again(server));
  }

  /** What {@code resync} is given of the options for {@code design}. */
  private List<String> again(ModelServer server) {
    List<String> options = new ArrayList<>(services(server));
    int kit = further.indexOf("--kit");
    if (kit >= 0) {
      options.addAll(further.subList(kit, kit + 2));
    }
    return options;
  }

  static Landing.From from(Fetched base) {
    return new Landing.From(base.server(), base.project(), base.revision());
  }

  private List<String> services(ModelServer server) {
    List<String> options = new ArrayList<>();
    if (!with.isEmpty()) {
      options.add("--services");
      with.forEach(name -> options.add(service(server, name).toString()));
    }
    return options;
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
      if (Comments.parts(drained) == 0) {
        say("Nothing was laid out, so that nothing was put on the server.");
        return ExitCode.CLEAN;
      }
      Landing.Landed landed = landing(base.server()).land(from(base), drained, this::says);
      say(landed.told(base.project()));
      return ExitCode.CLEAN;
    }

    private String says(Path drained, Revision from) {
      return Comments.ofAssembly(Comments.parts(drained), from.number())
          + comment.map(c -> "; " + c).orElse("");
    }
  }
}
