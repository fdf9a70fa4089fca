package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The few shell commands by which pages make the files that they speak of: {@code cp}, {@code
 * mkdir} and {@code sed 's/TEXT/OTHER/' FILE > FILE}, done as they say in a folder that has the
 * repository's samples and kits.
 */
final class ShellLines {
  private static final Pattern SED = Pattern.compile("sed (['\"])s/(.*)/(.*)/\\1 (\\S+) > (\\S+)");

  private final Path root;
  private final Path folder;

  ShellLines(Path root, Path folder) {
    this.root = root;
    this.folder = folder;
  }

  /** Does the line, if it is one of these. */
  boolean run(String line) throws IOException {
    Matcher sed = SED.matcher(line);
    List<String> words = List.of(line.strip().split(" +"));
    if (sed.matches()) {
      sed(sed.group(2), sed.group(3), sed.group(4), sed.group(5));
    } else if (words.get(0).equals("mkdir")) {
      Files.createDirectories(folder.resolve(words.get(1)));
    } else if (words.get(0).equals("cp")) {
      for (String from : words.subList(1, words.size() - 1)) {
        copy(from, words.get(words.size() - 1));
      }
    } else {
      return false;
    }
    return true;
  }

  /**
   * The first place in each line, as sed does; no sign in it may be one of a pattern but a point.
   */
  private void sed(String text, String other, String from, String to) throws IOException {
    assertThat(text).doesNotContainPattern("[\\[\\]*^$\\\\]");
    String given = Files.readString(file(from));
    StringBuilder made = new StringBuilder();
    for (String line : given.split("(?<=\n)")) {
      made.append(line.replaceFirst(Pattern.quote(text), Matcher.quoteReplacement(other)));
    }
    assertThat(made.toString()).as("what sed changes in " + from).isNotEqualTo(given);
    Files.writeString(folder.resolve(to), made.toString());
  }

  private void copy(String from, String to) throws IOException {
    Path file = file(from);
    Path at = folder.resolve(to);
    Path copy = to.endsWith("/") || to.equals(".") ? at.resolve(file.getFileName()) : at;
    Files.write(copy.normalize(), Files.readAllBytes(file));
  }

  private Path file(String name) {
    Path own = folder.resolve(name);
    return Files.exists(own) ? own : root.resolve(name);
  }
}
