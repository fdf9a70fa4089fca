package org.underlee;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Links between the pages of this project lead somewhere. */
class LinksTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final Pattern LINK = Pattern.compile("]\\(([^)\\s]+)\\)");
  private static final Pattern HEADING = Pattern.compile("(?m)^#+ (.+)$");

  @TempDir Path folder;

  @Test
  void everyLinkOfEveryPageLeadsSomewhere() throws IOException {
    List<Path> pages =
        new ArrayList<>(List.of(ROOT.resolve("README.md"), ROOT.resolve("DEVELOPERS.md")));
    for (String below : List.of("docs", "samples")) {
      try (Stream<Path> walk = Files.walk(ROOT.resolve(below))) {
        walk.filter(p -> p.toString().endsWith(".md"))
            .filter(p -> !p.toString().contains("node_modules"))
            .forEach(pages::add);
      }
    }
    List<String> broken = new ArrayList<>();
    for (Path page : pages) {
      broken.addAll(brokenIn(page));
    }
    assertThat(pages).hasSizeGreaterThan(20);
    assertThat(broken).isEmpty();
  }

  @Test
  void aLinkThatLeadsNowhereIsNoticed() throws IOException {
    Files.writeString(folder.resolve("there.md"), "# Exit codes, all\n");
    Path page =
        Files.writeString(
            folder.resolve("page.md"),
            "[a](there.md) [b](gone.md) [c](there.md#exit-codes-all) [d](there.md#gone)\n");
    assertThat(brokenIn(page)).containsExactly(page + ": gone.md", page + ": there.md#gone");
  }

  private static List<String> brokenIn(Path page) throws IOException {
    List<String> broken = new ArrayList<>();
    for (String link : all(LINK, Files.readString(page))) {
      if (!link.contains("://") && !leads(page, link)) {
        broken.add(page + ": " + link);
      }
    }
    return broken;
  }

  private static boolean leads(Path page, String link) throws IOException {
    String[] parts = link.split("#", 2);
    Path target = parts[0].isEmpty() ? page : page.resolveSibling(parts[0]).normalize();
    if (!Files.exists(target)) {
      return false;
    }
    return parts.length == 1
        || all(HEADING, Files.readString(target)).stream()
            .anyMatch(h -> anchor(h).equals(parts[1]));
  }

  /** The anchor that a heading gets where pages are shown: lower case, dashes, no punctuation. */
  private static String anchor(String heading) {
    return heading.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N} _-]", "").replace(' ', '-');
  }

  private static List<String> all(Pattern pattern, String text) {
    return pattern.matcher(text).results().map((MatchResult m) -> m.group(1)).toList();
  }
}
