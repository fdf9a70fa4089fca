package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class GlobalIdsTest {
  /** RFC 9562, section 6.6, table of namespace ids. */
  private static final UUID DNS = UUID.fromString("6ba7b810-9dad-11d1-80b4-00c04fd430c8");

  @Test
  void theTestVectorOfTheStandardComesOut() {
    // RFC 9562, appendix A.4.
    assertThat(GlobalIds.version5(DNS, "www.example.com"))
        .hasToString("2ed6657d-e927-568b-95e1-2665a8aea6a2");
  }

  @Test
  void aUuidIsCompressedToTheStandardsTwentyTwoDigits() {
    // 128 bits in base 64 with the standard's digits, worked with whole-number arithmetic.
    assertThat(GlobalIds.compressed(UUID.fromString("2ed6657d-e927-568b-95e1-2665a8aea6a2")))
        .isEqualTo("0krcLzwITMYvNX9cMehgQY");
    assertThat(GlobalIds.compressed(new UUID(0, 0))).isEqualTo("0000000000000000000000");
    assertThat(GlobalIds.compressed(new UUID(-1, -1))).isEqualTo("3$$$$$$$$$$$$$$$$$$$$$");
  }

  @Test
  void eachPartOfTheNameMatters() {
    GlobalIds ids = new GlobalIds("p");
    assertThat(ids.of("f", "pan", "1")).isEqualTo(new GlobalIds("p").of("f", "pan", "1"));
    assertThat(
            java.util.List.of(
                ids.of("f", "pan", "1"),
                ids.of("f", "pan", "2"),
                ids.of("f", "rail", "1"),
                ids.of("g", "pan", "1"),
                ids.of("fp", "an", "1"),
                new GlobalIds("q").of("f", "pan", "1")))
        .doesNotHaveDuplicates();
  }

  @Test
  void anIdIsFoundAsATextOfItsOwnUpToTheLastByte() {
    String id = "0krcLzwITMYvNX9cMehgQY";
    assertThat(firstIn("('x','" + id + "'", id)).contains(id);
    assertThat(firstIn("'" + id + "'", id)).contains(id);
    assertThat(firstIn("''" + id, id)).isEmpty();
    assertThat(firstIn("'" + id + "0'", id)).isEmpty();
    assertThat(firstIn("'" + id + "'", "0krcLzwITMYvNX9cMehgQZ")).isEmpty();
  }

  private static Optional<String> firstIn(String text, String id) {
    return GlobalIds.firstIn(text.getBytes(StandardCharsets.UTF_8), Set.of(id));
  }
}
