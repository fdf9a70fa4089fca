package org.underlee.panel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.underlee.panel.view.PanelView;

/** Words stand out from what is behind them, by the contrast ratio of WCAG 2.2. */
class ContrastTest {
  /** WCAG 1.4.3 for words, 1.4.11 for signs, 1.4.6 for high contrast. */
  private static final double WORDS = 4.5;

  private static final double SIGNS = 3;
  private static final double HIGH = 7;

  private static final String LIGHT = ".underlee";
  private static final String DARK = ".underlee.tone-dark";
  private static final String CONTRAST = ".underlee.tone-contrast";

  /** What words have on what, besides what single rules say. */
  private static final List<Pair> PAIRS =
      List.of(
          new Pair("-color-fg-default", "-color-bg-default", WORDS),
          new Pair("-color-fg-default", "-color-bg-subtle", WORDS),
          new Pair("-color-fg-default", "-underlee-chosen", WORDS),
          new Pair("-color-fg-muted", "-color-bg-default", WORDS),
          new Pair("-color-fg-muted", "-color-bg-subtle", WORDS),
          new Pair("-color-fg-muted", "-underlee-chosen", WORDS),
          new Pair("-color-fg-subtle", "-color-bg-overlay", WORDS),
          new Pair("-color-danger-fg", "-color-bg-default", WORDS),
          new Pair("-color-warning-fg", "-color-bg-default", WORDS),
          new Pair("-color-danger-fg", "-underlee-pressed", SIGNS),
          new Pair("-color-warning-fg", "-underlee-pressed", SIGNS),
          new Pair("-color-accent-fg", "-underlee-pressed", SIGNS));

  private static String css = "";

  private record Pair(String words, String behind, double least) {}

  @BeforeAll
  static void read() throws IOException {
    try (InputStream in = PanelView.class.getResourceAsStream("panel.css")) {
      css = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static Map<String, String> colours(String tone) {
    Map<String, String> colours =
        tone.equals(LIGHT) ? new HashMap<>() : new HashMap<>(colours(LIGHT));
    Matcher block = Pattern.compile(Pattern.quote(tone) + " \\{([^}]*)}").matcher(css);
    assertThat(block.find()).isTrue();
    Matcher colour = Pattern.compile("(-[\\w-]+): (#[0-9a-f]{6})").matcher(block.group(1));
    while (colour.find()) {
      colours.put(colour.group(1), colour.group(2));
    }
    return colours;
  }

  /** Rules that give both: words of one colour on one colour. */
  private static List<Pair> rules() {
    List<Pair> pairs = new ArrayList<>();
    Matcher rule = Pattern.compile("\\{([^}]*)}").matcher(css);
    while (rule.find()) {
      Matcher words = Pattern.compile("-fx-text-fill: (-[\\w-]+);").matcher(rule.group(1));
      Matcher behind = Pattern.compile("-fx-background-color: (-[\\w-]+);").matcher(rule.group(1));
      if (words.find() && behind.find()) {
        pairs.add(new Pair(words.group(1), behind.group(1), WORDS));
      }
    }
    return pairs;
  }

  private static double light(String hex) {
    double sum = 0;
    double[] weights = {0.2126, 0.7152, 0.0722};
    for (int i = 0; i < weights.length; i++) {
      double c = Integer.parseInt(hex.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
      sum += weights[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
    }
    return sum;
  }

  static double ratio(String a, String b) {
    double one = light(a) + 0.05;
    double other = light(b) + 0.05;
    return Math.max(one, other) / Math.min(one, other);
  }

  private static List<String> faint(String tone, List<Pair> pairs) {
    Map<String, String> colours = colours(tone);
    List<String> faint = new ArrayList<>();
    for (Pair pair : pairs) {
      String words = Objects.requireNonNull(colours.get(pair.words), pair.words);
      String behind = Objects.requireNonNull(colours.get(pair.behind), pair.behind);
      double ratio = ratio(words, behind);
      if (ratio < (tone.equals(CONTRAST) ? HIGH : pair.least)) {
        faint.add(String.format("%s on %s in %s: %.2f", pair.words, pair.behind, tone, ratio));
      }
    }
    return faint;
  }

  @Test
  void allWordsAndSignsStandOutInEveryTone() {
    List<Pair> all = new ArrayList<>(PAIRS);
    all.addAll(rules());
    assertThat(all).hasSizeGreaterThan(PAIRS.size() + 5);
    for (String tone : List.of(LIGHT, DARK, CONTRAST)) {
      assertThat(faint(tone, all)).isEmpty();
    }
  }

  @Test
  void theRatioIsThatOfTheStandardAndTooLittleIsFound() {
    assertThat(ratio("#000000", "#ffffff"))
        .isEqualTo(21, org.assertj.core.api.Assertions.within(1e-9));
    assertThat(ratio("#ffffff", "#808080"))
        .isEqualTo(3.95, org.assertj.core.api.Assertions.within(0.005));
    assertThat(
            faint(CONTRAST, List.of(new Pair("-color-fg-default", "-color-neutral-muted", WORDS))))
        .hasSize(1);
  }
}
