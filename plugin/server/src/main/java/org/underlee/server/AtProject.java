package org.underlee.server;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.underlee.finding.InputException;
import org.underlee.writeback.SafeSave;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** What every verb for one project has: which project, which revision. */
abstract class AtProject extends AtServer {
  @Option(
      names = "--project",
      paramLabel = "NAME",
      required = true,
      description = "The project; one within another is House/Structure.")
  String project = "";

  @Option(
      names = "--out-dir",
      paramLabel = "FOLDER",
      description = "Where files go that are not named; the current folder when not given.")
  Path folder = Path.of("");

  /** A model of a project in a file, and what it was made from. */
  record Fetched(ModelServer server, Project project, Revision revision, Path file) {}

  /** Brings a revision into a file; the newest when no number is given. */
  Fetched fetch(Optional<Integer> number, Optional<Path> target) {
    ModelServer server = server();
    Project found = server.project(project);
    Revision revision =
        number.map(n -> server.revision(found, n)).orElseGet(() -> server.newest(found));
    return fetch(server, found, revision, target);
  }

  /** Brings a revision that is known into a file. */
  Fetched fetch(ModelServer server, Project found, Revision revision, Optional<Path> target) {
    Path file = target.orElseGet(() -> folder.resolve(fileOf(found, revision)));
    byte[] model = server.download(found, revision, progress("Received"));
    save(file, model);
    say(
        "Revision "
            + revision.number()
            + " of \""
            + found.name()
            + "\" by "
            + revision.user()
            + " is in "
            + file
            + ".");
    return new Fetched(server, found, revision, file);
  }

  /** Where the model of a file goes with an assembly in it. */
  static Path drained(Path file) {
    String name = file.getFileName().toString();
    int end = name.lastIndexOf('.');
    return file.resolveSibling((end > 0 ? name.substring(0, end) : name) + ".drained.ifc");
  }

  /** A file that is there may be someone's work: one that says something else is not touched. */
  void save(Path file, byte[] model) {
    if (!Files.exists(file)) {
      new SafeSave().plain(file, file, true, model);
    } else if (!isSame(file, model)) {
      throw taken(file);
    }
  }

  private boolean isSame(Path file, byte[] model) {
    try {
      byte[] there = Files.readAllBytes(file);
      return Arrays.equals(there, model) || Contents.of(there).equals(Contents.of(model));
    } catch (IOException | InputException e) {
      throw taken(file);
    }
  }

  private ParameterException taken(Path file) {
    return new ParameterException(
        spec.commandLine(), file + " is there with something else in it; move it, or name another");
  }
}
