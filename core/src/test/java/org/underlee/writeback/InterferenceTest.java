package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.underlee.writeback.WriteBackTest.all;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.finding.InputException;
import org.underlee.ifc.IfcModel;
import org.underlee.schema.StandardSchemas;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.takeoff.Order;

/** What is in the assembly's way, told in the model. */
class InterferenceTest {
  /** The building of {@link TinyModel}, taken for something in the way. */
  private static final long THEIRS = 30;

  private static byte[] drained(String schema, String part) {
    return WriteBack.drained(
            IfcModel.of(
                StepFile.of(TinyModel.of(schema, TinyModel.Length.METRE).bytes(), "deck.ifc")),
            SampleField.of(List.of(SampleField.layout())),
            List.of(),
            new Order(List.of(), List.of(), Optional.empty()),
            SampleField.provenance(),
            List.of(new Interference(part, THEIRS, "0building000000000000a", "intersect")))
        .bytes();
  }

  @ParameterizedTest
  @ValueSource(strings = {"IFC4", "IFC4X3_ADD2"})
  void theirElementAndOurPartAreRelatedWithTheirKindOfMeeting(String schema) {
    StepFile file = StepFile.of(drained(schema, SampleField.id("pan-1")), "drained.ifc");
    assertThat(all(file, "IFCRELINTERFERESELEMENTS")).hasSize(1);
    StepInstance one = all(file, "IFCRELINTERFERESELEMENTS").get(0);
    assertThat(one.ref(4)).isEqualTo(THEIRS);
    assertThat(one.follow(5).text(7)).isEqualTo(SampleField.id("pan-1"));
    assertThat(one.text(7)).isEqualTo("intersect");
    assertThat(one.enumeration(8)).isEqualTo("F");
    // IFC4X3 has the space that they share besides; the building is no element, which is told.
    assertThat(SchemaTest.findings(StandardSchemas.of(schema), file, THEIRS))
        .allMatch(f -> f.message().endsWith("#30 is IfcBuilding"));
  }

  @Test
  void theOlderSchemaHasNoWayToTellIt() {
    assertThatThrownBy(() -> drained("IFC2X3", SampleField.id("pan-1")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no relationship");
  }

  @Test
  void aPartThatIsNotThereIsRefusedByName() {
    assertThatThrownBy(() -> drained("IFC4", "pan-99"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("pan-99");
  }
}
