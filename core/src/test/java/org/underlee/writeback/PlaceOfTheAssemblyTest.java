package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.writeback.WriteBackTest.all;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.ifc.IfcModel;
import org.underlee.step.StepFile;

/** Where the assembly hangs in models that lack what it would hang from. */
class PlaceOfTheAssemblyTest {
  private static final String MODEL =
      new String(TinyModel.of("IFC4", TinyModel.Length.METRE).bytes(), StandardCharsets.UTF_8);

  private static WriteBack.Written drained(String model) {
    return Drained.of(model.getBytes(StandardCharsets.UTF_8), List.of(SampleField.layout()));
  }

  /** No placement, and one that stands on itself. */
  @ParameterizedTest
  @ValueSource(strings = {"'Upper',$,$,$,", "'Upper',$,$,#60,"})
  void onAStoreyWhosePlaceIsNotKnownPartsStandWhereTheyWereLaidOut(String storey) {
    String model =
        MODEL
            .replace("'Upper',$,$,#41,", storey)
            .replace("#46=", "#60=IFCLOCALPLACEMENT(#60,#42);\n#46=");
    WriteBack.Written written = drained(model);
    IfcModel read = IfcModel.of(StepFile.of(written.bytes(), "drained.ifc"));
    ReadBackTest.assertEveryPart(read, written.globalIds());
    assertThat(all(read.step(), "IFCRELCONTAINEDINSPATIALSTRUCTURE").get(0).follow(5).text(2))
        .isEqualTo("Upper");
  }

  @Test
  void withoutABuildingItIsInTheSite() {
    String model =
        new String(
                TinyModel.of("IFC4", TinyModel.Length.METRE).withoutStorey().bytes(),
                StandardCharsets.UTF_8)
            .replaceFirst(
                "#30=IFCBUILDING[^\n]*",
                "#30=IFCSITE('0building000000000000a',#6,'Plot',\\$,\\$,#31,\\$,\\$,.ELEMENT.,\\$,\\$,\\$,\\$,\\$);");
    StepFile file = StepFile.of(drained(model).bytes(), "drained.ifc");
    assertThat(all(file, "IFCRELCONTAINEDINSPATIALSTRUCTURE").get(0).follow(5).text(2))
        .isEqualTo("Plot");
  }
}
