package org.underlee.command;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.run.Overrides;
import org.underlee.writeback.FilesRead;
import org.underlee.writeback.NotWrittenException;
import org.underlee.writeback.SafeSave;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/**
 * The files of one run. What it reads is never written over: that is every file that the command
 * line names, unless an option that says where to write names it, and the overrides beside the
 * model. The user is told of each file that is written, and where another one stood there.
 */
final class RunFiles {
  /** Options that say where to write. A new one that is not here is taken for what is read. */
  static final Set<String> TARGETS =
      Set.of(
          "--out",
          "--out-dir",
          "--takeoff",
          "--picture",
          "--csv",
          "--bcf",
          "--sarif",
          "--issues",
          "--changes",
          "--summary",
          "--journal");

  private final CommandSpec spec;
  private final FilesRead read;

  private RunFiles(CommandSpec spec, FilesRead read) {
    this.spec = spec;
    this.read = read;
  }

  /** Those of the run that this verb is in. */
  static RunFiles of(CommandSpec spec) {
    return new RunFiles(spec, readBy(spec.commandLine().getParseResult()));
  }

  /**
   * Refuses, before any work is done, a command line that would write over what it reads, or one
   * output over another.
   *
   * @throws NotWrittenException saying which file, and what names it
   */
  static void requireApart(ParseResult parsed) {
    FilesRead taken = readBy(parsed);
    for (OptionSpec option : parsed.matchedOptions()) {
      if (TARGETS.contains(option.longestName())) {
        for (Path target : files(option)) {
          require(target, taken);
          taken = taken.with(target, option.longestName());
        }
      }
    }
  }

  /**
   * Refuses a file that is written without being named, before any work is done for it.
   *
   * @throws NotWrittenException when the run reads it, or an option says to write it
   */
  void requireFree(Path target) {
    require(target, read);
    for (OptionSpec option : spec.commandLine().getParseResult().matchedOptions()) {
      if (TARGETS.contains(option.longestName())) {
        for (Path written : files(option)) {
          require(target, FilesRead.NONE.with(written, option.longestName()));
        }
      }
    }
  }

  /**
   * Refuses a file that the run makes in a folder that is named.
   *
   * @throws NotWrittenException when the run reads it
   */
  void requireNotRead(Path target) {
    require(target, read);
  }

  void text(Path target, String text) {
    save(target, text.getBytes(StandardCharsets.UTF_8));
  }

  /** Writes a file, whole or not at all, and says so. */
  void save(Path target, byte[] bytes) {
    say(wrote(target, () -> whole(target, bytes)) + ".");
  }

  /** The same for a file that was read first, so that nothing in it is lost. */
  void renew(Path target, byte[] bytes) {
    boolean there = Files.exists(target);
    requireNotRead(target);
    whole(target, bytes);
    say((there ? "Renewed " : "Wrote ") + target + ".");
  }

  /** Does what writes a file; gives back what is to be said of it, as the first words. */
  String wrote(Path target, Runnable save) {
    boolean there = Files.isRegularFile(target);
    requireNotRead(target);
    save.run();
    return "Wrote " + target + (there ? " in place of the file that was there" : "");
  }

  private static void whole(Path target, byte[] bytes) {
    // That the target is no input was looked at by the caller, for all inputs.
    new SafeSave().plain(target, target, true, bytes);
  }

  private void say(String text) {
    spec.commandLine().getErr().println(text);
  }

  private static void require(Path target, FilesRead taken) {
    Optional<String> writer = taken.partOf(target).filter(TARGETS::contains);
    if (writer.isPresent()) {
      throw new NotWrittenException(
          target + " was not written: " + writer.get() + " writes it too",
          "Choose another output file.");
    }
    taken.requireApart(target);
  }

  private static FilesRead readBy(ParseResult parsed) {
    FilesRead read = FilesRead.NONE;
    for (ArgSpec place : parsed.matchedPositionals()) {
      read = with(read, place, place.paramLabel());
    }
    for (ArgSpec place : parsed.matchedPositionals()) {
      for (Path file : files(place)) {
        Path roles = Overrides.pathBeside(file);
        read = Files.isRegularFile(roles) ? read.with(roles, "roles") : read;
      }
    }
    for (OptionSpec option : parsed.matchedOptions()) {
      if (!TARGETS.contains(option.longestName())) {
        read = with(read, option, option.longestName());
      }
    }
    return read;
  }

  /** What is no file, such as the name of a kit of the program's own, is not read. */
  private static FilesRead with(FilesRead read, ArgSpec named, String by) {
    FilesRead all = read;
    for (Path file : files(named)) {
      all = Files.isRegularFile(file) ? all.with(file, by) : all;
    }
    return all;
  }

  private static List<Path> files(ArgSpec named) {
    return named.originalStringValues().stream().flatMap(text -> path(text).stream()).toList();
  }

  /** Empty where no file can be called so. */
  private static Optional<Path> path(String text) {
    try {
      return Optional.of(Path.of(text));
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }
}
