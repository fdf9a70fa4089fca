package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The documentation opens from the disk: every link and picture of every page is there. */
class DocsSiteTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final Pattern LINK = Pattern.compile("(?:href|src)=\"([^\"]+)\"");

  @TempDir Path site;

  @Test
  void everyPageIsMadeAndEveryLinkOfItLeadsSomewhere() throws IOException {
    DocsSite.write(ROOT, site);
    List<Path> pages = pages();
    assertThat(pages).hasSizeGreaterThan(30).contains(site.resolve("docs/tutorial.html"));
    assertThat(pages.stream().flatMap(p -> dead(p).stream())).isEmpty();
  }

  @Test
  void aDeadLinkIsNoticed() throws IOException {
    DocsSite.write(ROOT, site);
    Files.delete(site.resolve("docs/tutorial.html"));
    assertThat(pages().stream().flatMap(p -> dead(p).stream()))
        .isNotEmpty()
        .allMatch(l -> l.contains("tutorial.html"));
  }

  @Test
  void noPageFetchesAnythingFromElsewhere() throws IOException {
    DocsSite.write(ROOT, site);
    for (Path page : pages()) {
      assertThat(Files.readString(page))
          .doesNotContain("src=\"http", "@import", "<script", "<link");
    }
  }

  private List<Path> pages() throws IOException {
    try (Stream<Path> tree = Files.walk(site)) {
      return tree.filter(p -> p.toString().endsWith(".html")).toList();
    }
  }

  private List<String> dead(Path page) {
    try {
      List<String> dead = new ArrayList<>();
      for (MatchResult link : LINK.matcher(Files.readString(page)).results().toList()) {
        String[] target = link.group(1).split("#", 2);
        boolean outside = link.group(1).contains("://");
        Path file = target[0].isEmpty() ? page : page.resolveSibling(target[0]).normalize();
        if (!outside
            && (!Files.isRegularFile(file) || target.length > 1 && !has(file, target[1]))) {
          dead.add(site.relativize(page) + ": " + link.group(1));
        }
      }
      return dead;
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static boolean has(Path page, String anchor) throws IOException {
    return Files.readString(page).contains("id=\"" + anchor + "\"");
  }
}
