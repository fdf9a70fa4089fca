package org.underlee.drainage.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.finding.InputException;
import org.underlee.units.Flows;
import org.underlee.units.Lengths;

/** Tables of the user's own beside those of the program. */
class OwnCapacitiesTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final CapacityData DATA = CapacityData.builtIn();
  private static final double THREE_INCHES = 3 * Lengths.INCH;

  private static String table(String id, double d1, double q1, double d2, double q2) {
    String row = "{\"sizeInches\": %s, \"fallInchesPerFoot\": 0, \"capacity\": %s}";
    return "{\"id\": \"%s\", \"use\": \"round downspout\", \"code\": \"Our county\",".formatted(id)
        + " \"edition\": \"2024\", \"table\": \"Table 7\", \"unit\": \"gpm\","
        + " \"source\": \"the printed code\", \"rows\": ["
        + row.formatted(d1, q1)
        + ","
        + row.formatted(d2, q2)
        + "]}";
  }

  private static String file(String tables, String shownOnly) {
    return """
    {"schema": "underlee/own-capacities/1",
     "tables": [%s],
     "shownOnly": [%s]}
    """
        .formatted(tables, shownOnly);
  }

  private static CapacityData with(String text) {
    return DATA.with("mine.json", text);
  }

  private static List<Capacity> leaders(CapacityData data) {
    return data.tabled(CapacityData.ROUND_DOWNSPOUT, THREE_INCHES, 0);
  }

  @Test
  void aTableOfTheUsersDecidesBesideTheProgramsAndIsSaidToBeTheirs() {
    CapacityData all = with(file(table("mine", 3, 50, 4, 190), ""));
    assertThat(leaders(all)).hasSize(leaders(DATA).size() + 1);
    assertThat(leaders(all))
        .filteredOn(c -> c.id().equals("mine"))
        .singleElement()
        .satisfies(
            c -> {
              assertThat(c.words()).isEqualTo("Our county 2024, Table 7 (your own table)");
              assertThat(c.accepted()).isTrue();
              assertThat(c.flow() / Flows.GPM).isCloseTo(50, within(1e-12));
            });
    assertThat(all.own()).extracting(CapacityData.Table::id).containsExactly("mine");
    assertThat(DATA.own()).isEmpty();
  }

  @Test
  void aTableWithTheIdOfOneOfTheProgramTakesItsPlace() {
    CapacityData all = with(file(table("ipc-2021-leader", 3, 80, 4, 190), ""));
    assertThat(leaders(all)).hasSameSizeAs(leaders(DATA));
    assertThat(leaders(all))
        .filteredOn(c -> c.id().equals("ipc-2021-leader"))
        .hasSize(1)
        .allMatch(c -> c.mark() == Mark.GIVEN && Math.abs(c.flow() / Flows.GPM - 80) < 1e-9);
  }

  /**
   * By hand: Wyly-Eaton gives 67 gpm for 3 in (NSPC 2006), which governs until a table says less.
   */
  @Test
  void whatMayNotDecideDecidesNoMore() {
    Downspout leader = Downspout.called(new Opening.Round(THREE_INCHES));
    assertThat(least(DATA, leader)).isCloseTo(67, within(1.0));
    assertThat(least(with(file(table("mine", 3, 50, 4, 190), "")), leader))
        .isEqualTo(50, within(1e-9));
    String off =
        "\"wyly-eaton\", \"nspc-2006-leader\", \"ipc-current-vertical-pipe\", \"ipc-2021-leader\"";
    assertThat(least(with(file(table("mine", 3, 85, 4, 190), off)), leader))
        .isEqualTo(85, within(1e-9));
  }

  /** Gallons a minute. */
  private static double least(CapacityData data, Downspout leader) {
    return new Rater(data, 0)
            .downspout(leader).stream()
                .filter(Capacity::accepted)
                .mapToDouble(Capacity::flow)
                .min()
                .orElseThrow()
        / Flows.GPM;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"flow-solution\" | always decides",
        "\"no-such\" | \"no-such\", which is to be shown only, is no method or table",
        "\"wyly-eaton\", \"area-rule\" | leaves no formula that decides for downspout",
        "\"hec-22-outlet\", \"en-12056-3-outlet\" | leaves no formula that decides for outlet"
      })
  void shownOnlyThatWouldLeaveNothingToDecideIsRefused(String shownOnly, String fault) {
    assertThatThrownBy(() -> with(file("", shownOnly)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("mine.json")
        .hasMessageContaining(fault);
  }

  @Test
  void aTableInWhichALargerPipeCarriesLessIsRefusedWithItsRows() {
    assertThatThrownBy(() -> with(file(table("mine", 3, 90, 4, 80), "")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("mine.json")
        .hasMessageContaining("rows 1 and 2, contradict");
    assertThatThrownBy(() -> with(file(table("mine", 3, 90, 3, 91), "")))
        .hasMessageContaining("contradict");
  }

  @Test
  void anUnknownKeyIsToldWithItsLineAndColumn() {
    String text =
        file(table("mine", 3, 90, 4, 190), "").replace("\"gpm\"", "\"gpm\", \"mark\": \"seen\"");
    assertThatThrownBy(() -> with(text))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("mine.json")
        .hasMessageContaining("mark")
        .hasMessageMatching("(?s).*line 2.*column \\d+.*");
  }

  @ParameterizedTest
  @ValueSource(strings = {"schema", "tables", "shownOnly"})
  void aKeyThatIsLeftOutIsMissed(String key) {
    String text =
        file(table("mine", 3, 90, 4, 190), "").replace("\"" + key + "\"", "\"_" + key + "\"");
    assertThatThrownBy(() -> with(text))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(key);
  }

  @Test
  void theExampleOfThePageCanBeUsed() throws IOException {
    String page = Files.readString(ROOT.resolve("docs/how-to/rate-by-your-own-tables.md"));
    int from = page.indexOf("```json") + "```json".length();
    CapacityData all = with(page.substring(from, page.indexOf("```", from)));
    assertThat(all.own()).isNotEmpty();
  }
}
