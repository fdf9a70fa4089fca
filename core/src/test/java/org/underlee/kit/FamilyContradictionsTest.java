package org.underlee.kit;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.finding.InputException;

/** A number of a membrane or of a sheet kit that contradicts another one. */
class FamilyContradictionsTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @ParameterizedTest
  @CsvSource({
    "membrane-drape, troughNarrowestMm, 5000, troughWidestMm",
    "membrane-drape, membraneWidthMm, 300, the roll is too narrow for a trough in the widest bay",
    "membrane-drape, troughEndGapMm, 1, the trough would end beyond the low-end line",
    "membrane-drape, troughEndGapMm, 500, drip in front of it",
    "membrane-drape, capOverhangMm, 900, two cap strips meet over the narrowest bay",
    "membrane-drape, downspoutDiameterMm, 500, the outlet must fit in the gutter's floor",
    "ribbed-sheet, sheetCrestMm, 90, no width is left between two ribs for water",
    "ribbed-sheet, sheetPitchMm, 800, a sheet has at least two ribs",
    "ribbed-sheet, sheetLapMm, 3048, a sheet must be longer than its own lap",
    "ribbed-sheet, sheetEndGapMm, 6, the sheets would end beyond the low-end line",
    "ribbed-sheet, sheetEndGapMm, 127, drip in front of it",
    "ribbed-sheet, battenWidthMm, 914.4, battens would touch each other",
    "ribbed-sheet, battenHangerGripMm, 450, no hanger reaches",
    "ribbed-sheet, sheetLongestMm, 9000, item \"profiled-sheet\" is sold in lengths of at most 3048",
  })
  void isRefusedByNameWithBothNumbers(String kit, String key, double value, String because)
      throws IOException {
    ObjectNode text = text(kit);
    ((ObjectNode) text.get("values").get(key)).put("value", value);
    assertThatThrownBy(() -> KitReader.read(text.toString(), "my-kit.json"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(key)
        .hasMessageContaining(because);
  }

  private static ObjectNode text(String kit) throws IOException {
    try (InputStream in = KitReader.class.getResourceAsStream(kit + ".json")) {
      return (ObjectNode) JSON.readTree(Objects.requireNonNull(in, kit));
    }
  }
}
