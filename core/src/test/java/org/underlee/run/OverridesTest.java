package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.finding.InputException;
import org.underlee.framing.Role;

class OverridesTest {
  private static final String GOOD =
      """
      {"schema": "underlee/overrides/1",
       "roles": {"a": "ledger", "b": "not-framing", "c": "drop-beam"},
       "outside": {"d": true}}
      """;

  @TempDir Path folder;

  @Test
  void rolesAndOutsideAreReadByGlobalId() {
    Overrides overrides = Overrides.read(GOOD, "deck.underlee.json");
    assertThat(overrides.told().roles()).isEqualTo(Map.of("a", Role.LEDGER, "c", Role.DROP_BEAM));
    assertThat(overrides.told().notFraming()).containsExactly("b");
    assertThat(overrides.told().outside()).isEqualTo(Map.of("d", true));
  }

  @Test
  void theFileBesideTheModelIsFoundByTheModelsName() throws Exception {
    Path model = folder.resolve("deck.v2.ifc");
    assertThat(Overrides.beside(model)).isEmpty();
    Files.writeString(folder.resolve("deck.v2.underlee.json"), GOOD);
    assertThat(Overrides.beside(model).orElseThrow().file()).isEqualTo("deck.v2.underlee.json");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "{ | line 1",
        "{\"schema\": \"underlee/overrides/1\"} | roles",
        "{\"schema\": \"x\", \"roles\": {}, \"outside\": {}} | its schema is \"x\"",
        "{\"schema\": \"underlee/overrides/1\", \"roles\": {}, \"outside\": {}, \"kit\": 1} | kit",
        "{\"schema\": \"underlee/overrides/1\", \"roles\": {\"a\": \"purlin\"}, \"outside\": {}} |"
            + " the role \"purlin\" of a is none of blocking",
        "{\"schema\": \"underlee/overrides/1\", \"roles\": {\"a\": \"rim\", \"a\": \"post\"},"
            + " \"outside\": {}} | Duplicate",
        "{\"schema\": \"underlee/overrides/1\", \"roles\": {}, \"outside\": {}} more | line 1",
        "{\"schema\": \"underlee/overrides/2\", \"roles\": {}, \"outside\": {}, \"bothWays\": [],"
            + " \"highLines\": {}} | highLines",
        "{\"schema\": \"underlee/overrides/3\", \"roles\": {}, \"outside\": {}, \"bothWays\": [],"
            + " \"highLines\": {\"j\": \"half way\"}} | the high line of j: \"half way\" is not a length"
      })
  void aSlipIsToldWithItsPlace(String text, String told) {
    assertThatThrownBy(() -> Overrides.read(text, "deck.underlee.json"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("deck.underlee.json")
        .hasMessageContaining(told);
  }

  @Test
  void theNewestWordOnAnElementHolds() {
    Overrides file = Overrides.read(GOOD, "deck.underlee.json");
    Overrides both = file.with(Map.of("a", "not-framing", "b", "rim"));
    assertThat(both.told().roles()).isEqualTo(Map.of("b", Role.RIM, "c", Role.DROP_BEAM));
    assertThat(both.told().notFraming()).containsExactly("a");
    assertThat(both.told().outside()).isEqualTo(Map.of("d", true));
    assertThat(Overrides.words()).contains("ledger", "drop-beam", "not-framing");
    assertThatThrownBy(() -> file.with(Map.of("a", "roof"))).hasMessageContaining("roof");
  }

  @Test
  void aFileThatCannotBeReadIsNamed() {
    assertThatThrownBy(() -> Overrides.read(folder.resolve("none.json")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("none.json");
  }

  @Test
  void theThirdSchemaHasThePlacesOfHighLinesAndOlderOnesAreReadAsBefore() {
    String third =
        "{\"schema\": \"underlee/overrides/3\", \"roles\": {}, \"outside\": {}, \"bothWays\":"
            + " [\"a\"], \"highLines\": {\"b\": \"7' 9 1/2\\\"\", \"c\": \"2.36 m\"}}";
    Overrides read = Overrides.read(third, "deck.underlee.json");
    assertThat(read.told().bothWays()).containsExactly("a");
    assertThat(read.told().highLines()).isEqualTo(Map.of("b", 93.5 * 0.0254, "c", 2.36));
    assertThat(read.told().globalIds()).containsExactly("a", "b", "c");
    assertThat(Overrides.read(read.text(), "again").told()).isEqualTo(read.told());
    String second =
        "{\"schema\":\"underlee/overrides/2\",\"roles\":{},\"outside\":{},\"bothWays\":[\"a\"]}";
    assertThat(Overrides.read(second, "deck.underlee.json").text()).isEqualTo(second);
    assertThat(Overrides.read(GOOD, "deck.underlee.json").told().highLines()).isEmpty();
  }
}
