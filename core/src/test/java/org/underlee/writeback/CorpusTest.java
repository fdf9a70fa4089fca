package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.framing.Storey;
import org.underlee.ifc.IfcModel;
import org.underlee.layout.FieldLayout;
import org.underlee.schema.Schema;
import org.underlee.schema.StandardSchemas;
import org.underlee.step.StepFile;

/** Real models written by many programs. */
class CorpusTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "schependomlaan/VL_Constructief.ifc",
        "creative-freedom/creative-freedom_head.ifc",
        "autotimber/home-2floor_structure.ifc",
        "bsi-examples/wall-elemented-case_studs.ifc",
        "design-change-m1/M1.ifc",
        "fzk-haus/AC20-FZK-Haus_NoneAndDoubleGUID.ifc",
        "gg-tekla-frame/IFC_Model.ifc",
        "homeskz/homeskz_grey2_3F.ifc",
        "opening-design/lake-kegonsa_project1.ifc",
        "pcert-ifc4/Building-Structural.ifc",
        "pcert-ifc4x3/Building-Structural.ifc",
        "silly-scene/ifc-silly-sample-scene-2x3.ifc",
      })
  void aRealModelIsDrainedSoundlyAndStrippedToItsBytes(String name) {
    Path path = Path.of(System.getProperty("underlee.corpus", "")).resolve("models").resolve(name);
    assumeTrue(Files.isRegularFile(path), "skipped: no model " + name + " in the corpus");
    IfcModel model = IfcModel.of(StepFile.read(path));
    WriteBack.Written written =
        WriteBack.drained(
            model,
            SampleField.of(List.of(onLastStorey(model))),
            SampleField.bill(),
            SampleField.provenance());
    byte[] original = model.step().bytes();
    BlockCheck.require(original, written.bytes());
    assertThat(Strip.original(written.bytes()).orElseThrow().bytes()).isEqualTo(original);
    StepFile drained = StepFile.of(written.bytes(), name);
    assertThat(drained.count()).isEqualTo(model.step().count() + written.instances());
    Schema schema = StandardSchemas.of(model.step().schema());
    assertThat(SchemaTest.findings(schema, drained, model.step().highestId()))
        .filteredOn(f -> !f.rule().id().equals("schema-name"))
        .isEmpty();
    ReadBackTest.assertEveryPart(IfcModel.of(drained), written.globalIds());
  }

  private static FieldLayout onLastStorey(IfcModel model) {
    FieldLayout s = SampleField.layout();
    List<Storey> storeys = model.storeys();
    Optional<Storey> last =
        storeys.isEmpty() ? Optional.empty() : Optional.of(storeys.get(storeys.size() - 1));
    return new FieldLayout(
        s.deck(),
        s.field(),
        last,
        s.seatHigh(),
        s.fall(),
        s.run(),
        s.lowEnd(),
        s.binding(),
        s.parts(),
        s.links());
  }
}
