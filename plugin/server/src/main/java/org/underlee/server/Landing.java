package org.underlee.server;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.underlee.command.ExitCode;
import org.underlee.command.Verb;
import org.underlee.step.StepFile;
import org.underlee.writeback.Strip;

/**
 * A drained model on its way into a project. Where a revision of someone else has come meanwhile,
 * the assembly is taken over onto that one, and what changed is shown; nothing is written over.
 */
final class Landing {
  /** With people who check in every few minutes, one is enough. */
  private static final int TRIES = 3;

  private final AtProject verb;
  private final Verb.Program underlee;
  private final Supplier<List<String>> options;

  /**
   * A way into a project.
   *
   * @param options for {@code resync}: the kit and the models of services
   */
  Landing(AtProject verb, Verb.Program underlee, Supplier<List<String>> options) {
    this.verb = verb;
    this.underlee = underlee;
    this.options = options;
  }

  /** What to say of the revision. */
  @FunctionalInterface
  interface Comment {
    /**
     * A comment.
     *
     * @param drained the file that lands
     * @param from the revision that the file has the designer's part of
     */
    String of(Path drained, Revision from);
  }

  /** The revision that a file was made from. */
  record From(ModelServer server, Project project, Revision revision) {}

  /** A file that landed, and the revision that it is. */
  record Landed(Path file, Revision revision) {
    String told(Project project) {
      return file + " is revision " + revision.number() + " of \"" + project.name() + "\".";
    }
  }

  /**
   * Checks a drained model in.
   *
   * @param base what it was made from
   * @throws ServerException when the server refuses or fails, or where the model has more than an
   *     assembly that the newest revision has not
   */
  Landed land(From base, Path drained, Comment comment) {
    Path file = drained;
    From from = base;
    Revision under = base.revision();
    for (int tries = 1; ; tries++) {
      try {
        String says = comment.of(file, from.revision());
        return new Landed(file, put(from.server(), from.project(), under, file, says));
      } catch (Overtaken e) {
        if (tries == TRIES || !isAssemblyAlone(from, file)) {
          throw e;
        }
        verb.say(e.what());
        from = new From(from.server(), from.project(), e.newer());
        file = takenOver(from, file);
        under = e.top();
      }
    }
  }

  private Revision put(
      ModelServer server, Project project, Revision under, Path file, String says) {
    Project now = server.again(project);
    return server.checkIn(now, Optional.of(under), file, says, verb.progress("Sent"));
  }

  /** The newer revision with the assembly. */
  private Path takenOver(From from, Path drained) {
    AtProject.Fetched newer =
        verb.fetch(from.server(), from.project(), from.revision(), Optional.empty());
    Path file = AtProject.drained(newer.file());
    List<String> args = new ArrayList<>();
    args.addAll(List.of("resync", newer.file().toString(), "--from", drained.toString()));
    args.addAll(List.of("--out", file.toString()));
    args.addAll(options.get());
    if (Strip.mayHold(StepFile.read(newer.file()))) {
      verb.say("It has an assembly too, which stays in that revision; yours takes its place.");
    }
    int code = underlee.run(verb.out(), verb.err(), args.toArray(String[]::new));
    if (code != ExitCode.CLEAN) {
      throw new ServerException(
          "The assembly could not be taken over onto revision "
              + newer.revision().number()
              + "; nothing was put.",
          "Your copy is " + drained + "; the newer revision is in " + newer.file() + ".");
    }
    return file;
  }

  /** Whether without the assembly the file is the revision that it was made from. */
  private static boolean isAssemblyAlone(From from, Path drained) {
    try {
      Optional<Strip.Stripped> stripped = Strip.original(Files.readAllBytes(drained));
      byte[] base = from.server().download(from.project(), from.revision(), Progress.NONE);
      byte[] designers = Strip.original(base).map(Strip.Stripped::bytes).orElse(base);
      return stripped
          .map(s -> Contents.of(s.bytes()))
          .filter(Contents.of(designers)::equals)
          .isPresent();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
