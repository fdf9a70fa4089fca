package org.underlee.server;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.command.ExitCode;
import org.underlee.command.Verb;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
    name = "open",
    description = {
      "Opens a revision in the panel. When its window is closed, an assembly that was written there,"
          + " in place or beside, is added as a new revision."
    },
    mixinStandardHelpOptions = true)
final class OpenCommand extends AtProject {
  private final Verb.Program underlee;

  @Option(names = "--revision", paramLabel = "N", description = "The newest when not given.")
  Optional<Integer> revision = Optional.empty();

  OpenCommand(Verb.Program underlee) {
    this.underlee = underlee;
  }

  @Override
  int work() {
    Fetched base = fetch(revision, Optional.empty());
    Map<Path, Optional<byte[]>> before = new LinkedHashMap<>();
    for (Path file : List.of(drained(base.file()), base.file())) {
      before.put(file, bytes(file));
    }
    int code = underlee.run(out(), err(), "open", base.file().toString());
    if (code == ExitCode.CLEAN) {
      before.entrySet().stream()
          .filter(e -> isWritten(e.getKey(), e.getValue()))
          .map(Map.Entry::getKey)
          .findFirst()
          .ifPresentOrElse(
              file -> put(base, file),
              () -> say("No assembly was written, so that nothing was put on the server."));
    }
    return code;
  }

  private void put(Fetched base, Path file) {
    Landing.From from = new Landing.From(base.server(), base.project(), base.revision());
    Landing.Landed landed =
        new Landing(this, underlee, List::of)
            .land(from, file, (drained, on) -> comment(drained, on));
    say(landed.told(base.project()));
  }

  private static String comment(Path drained, Revision on) {
    return Comments.ofAssembly(Comments.parts(drained), on.number());
  }

  private static boolean isWritten(Path file, Optional<byte[]> before) {
    Optional<byte[]> now = bytes(file);
    boolean same = now.isPresent() && before.filter(b -> Arrays.equals(b, now.get())).isPresent();
    return now.isPresent() && !same && Comments.parts(file) > 0;
  }

  private static Optional<byte[]> bytes(Path file) {
    try {
      return Files.exists(file) ? Optional.of(Files.readAllBytes(file)) : Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
