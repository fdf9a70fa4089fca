package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is read ahead: nothing is left for the one reader but what no chunk shows whole. */
class StretchesTest {
  private static final int INSTANCES = 2000;

  private record Plain(StepBytes bytes, List<Long> starts) {}

  /** Instances of one length, each beginning after a semicolon, a line end and a space. */
  private static Plain plain() {
    StringBuilder lines = new StringBuilder();
    for (int i = 1; i <= INSTANCES; i++) {
      lines.append(" #").append(1000 + i).append("=IFCPOINT(1.);\n");
    }
    String text = StepTexts.file(lines.toString().stripTrailing());
    List<Long> starts = new ArrayList<>();
    for (int at = text.indexOf(" #"); at >= 0; at = text.indexOf(" #", at + 1)) {
      starts.add(at + 1L);
    }
    return new Plain(new HeapBytes(text.getBytes(StandardCharsets.US_ASCII)), starts);
  }

  private static Stretches of(Plain plain, int chunk) {
    StepSource source = new StepSource(plain.bytes(), "deck.ifc", StepLimits.STANDARD);
    return new Stretches(source, plain.starts().get(0), chunk);
  }

  /** Goes through a file as the one reader does; gives the instances that it got in stretches. */
  private static List<Long> readAhead(Plain plain, Stretches stretches) {
    List<Long> ahead = new ArrayList<>();
    for (int i = 0; i < INSTANCES; ) {
      Optional<Stretch> met = stretches.at(plain.starts().get(i));
      if (met.isEmpty()) {
        i++;
        continue;
      }
      Stretch stretch = met.get();
      for (int k = 0; k < stretch.count; k++) {
        ahead.add(stretch.start + stretch.distances[k]);
        assertThat(stretch.ids[k]).isEqualTo(1001 + i + k);
      }
      i += stretch.count;
      boolean atNext = i < INSTANCES && stretch.stop == plain.starts().get(i);
      assertThat(atNext || i == INSTANCES).as("where it stops").isTrue();
    }
    return ahead;
  }

  @ParameterizedTest
  @ValueSource(ints = {29, 100, 1024, 1031, 4096})
  void everyInstanceOfAPlainFileIsReadAheadButInTheLastTwoChunks(int chunk) {
    Plain plain = plain();
    List<Long> ahead = readAhead(plain, of(plain, chunk));
    long waves = plain.bytes().size() - 2L * chunk;
    List<Long> whole = plain.starts().stream().filter(s -> s < waves).toList();
    assertThat(ahead).startsWith(whole.get(0)).containsSubsequence(whole);
    assertThat(plain.starts()).containsSubsequence(ahead);
  }

  @ParameterizedTest
  @ValueSource(ints = {100, 1024})
  void theNextStretchIsToldAndOneThatIsPassedByIsDropped(int chunk) {
    Plain plain = plain();
    Stretches stretches = of(plain, chunk);
    Stretch first = stretches.at(plain.starts().get(0)).orElseThrow();
    assertThat(first.start).isEqualTo(plain.starts().get(0));
    assertThat(stretches.next()).isEqualTo(first.stop);
    // someone who reads on inside of it comes past the next one's beginning
    long inside = plain.starts().get(plain.starts().indexOf(first.stop) + 1);
    assertThat(stretches.at(inside)).isEmpty();
    assertThat(stretches.next()).isGreaterThan(inside);
    long next = stretches.next();
    assertThat(stretches.at(next - 1)).isEmpty();
    assertThat(stretches.next()).as("not dropped before it is passed").isEqualTo(next);
    assertThat(stretches.at(next)).isPresent();
  }

  @ParameterizedTest
  @ValueSource(ints = {1 << 20})
  void aFileOfLessThanTwoChunksIsNotReadAhead(int chunk) {
    Plain plain = plain();
    Stretches stretches = of(plain, chunk);
    assertThat(stretches.at(plain.starts().get(0))).isEmpty();
    assertThat(stretches.next()).isEqualTo(plain.bytes().size());
  }

  @ParameterizedTest
  @ValueSource(strings = {"'; #7=A();'", "/*;\n#7=A();*/", "'x;#'", "\"0;#7\""})
  void whatOnlyLooksLikeAnInstanceIsNeverMet(String trap) {
    StringBuilder lines = new StringBuilder();
    for (int i = 1; i <= 400; i++) {
      lines.append("#").append(i).append("=A(").append(trap).append(",1);\n");
    }
    StepSource source =
        new StepSource(
            new HeapBytes(StepTexts.file(lines.toString()).getBytes(StandardCharsets.US_ASCII)),
            "deck.ifc",
            StepLimits.STANDARD);
    StepScanner scan = new StepScanner(source, 64).scan();
    assertThat(scan.index.count()).isEqualTo(400);
    assertThat(scan.highestId()).isEqualTo(400);
  }
}
