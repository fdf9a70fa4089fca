package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.finding.InputException;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.ifc.IfcModel;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Part;
import org.underlee.schema.StandardSchemas;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.units.Words;

class WriteBackTest {
  static StepFile drained(TinyModel model) {
    return StepFile.of(Drained.of(model).bytes(), "drained.ifc");
  }

  static List<StepInstance> all(StepFile file, String keyword) {
    return IntStream.of(file.ofKeyword(keyword)).mapToObj(file::decode).toList();
  }

  @Test
  void anOlderModelWithoutOwnerHistoryGetsOne() {
    TinyModel model = TinyModel.of("IFC2X3", TinyModel.Length.METRE).withoutOwnerHistory();
    StepFile file = drained(model);
    StepInstance own = all(file, "IFCOWNERHISTORY").get(0);
    assertThat(own.enumeration(3)).isEqualTo("NOCHANGE");
    assertThat(all(file, "IFCELEMENTASSEMBLY").get(0).ref(1)).isEqualTo(own.id());
  }

  @ParameterizedTest
  @CsvSource({
    "IFC2X3, IFCFLOWSEGMENT, 2",
    "IFC4, IFCPIPESEGMENT, 2",
    "IFC4X3_ADD2, IFCPIPESEGMENT, 2",
    "IFC2X3, IFCFLOWFITTING, 3",
    "IFC4, IFCPIPEFITTING, 3",
    "IFC4X3_ADD2, IFCPIPEFITTING, 3",
    "IFC2X3, IFCPLATE, 3",
    "IFC4, IFCMEMBER, 4",
    "IFC2X3, IFCCOVERING, 1",
    "IFC4, IFCDISCRETEACCESSORY, 1",
    "IFC2X3, IFCMECHANICALFASTENER, 1",
    "IFC2X3, IFCSYSTEM, 1",
    "IFC4, IFCDISTRIBUTIONSYSTEM, 1",
    "IFC4, IFCOPENINGELEMENT, 1",
    "IFC2X3, IFCPIPESEGMENTTYPE, 2",
    "IFC2X3, IFCRELCONNECTSPORTTOELEMENT, 8",
    "IFC4, IFCDISTRIBUTIONPORT, 8",
    "IFC4X3_ADD2, IFCRELCONNECTSPORTS, 3",
    "IFC4, IFCCOSTITEM, 4",
    "IFC2X3, IFCRELSCHEDULESCOSTITEMS, 1",
    "IFC4, IFCMATERIALPROFILESET, 5",
    "IFC2X3, IFCMATERIALPROFILESET, 0"
  })
  void eachKindOfPartIsWrittenAsTheStandardsClass(String schema, String keyword, int count) {
    StepFile file = drained(TinyModel.of(schema, TinyModel.Length.METRE));
    assertThat(all(file, keyword)).hasSize(count);
  }

  @Test
  void aPredefinedTypeIsGivenOnceByTheOccurrenceOrByTheType() {
    StepFile now = drained(TinyModel.of("IFC4", TinyModel.Length.METRE));
    assertThat(all(now, "IFCPIPESEGMENT").get(0).enumeration(8)).isEqualTo("GUTTER");
    assertThat(all(now, "IFCPIPESEGMENTTYPE").get(0).enumeration(9)).isEqualTo("NOTDEFINED");
    StepFile old = drained(TinyModel.of("IFC2X3", TinyModel.Length.METRE));
    assertThat(all(old, "IFCPIPESEGMENTTYPE").get(0).enumeration(9)).isEqualTo("GUTTER");
  }

  @Test
  void aQuantityNamesItsUnitOnlyWhereTheModelAssignsNone() {
    // The model in feet assigns no unit of area; the one in millimetres assigns square metres.
    StepInstance own =
        all(drained(TinyModel.of("IFC4", TinyModel.Length.FOOT)), "IFCQUANTITYAREA").get(0);
    StepInstance assigned =
        all(drained(TinyModel.of("IFC4", TinyModel.Length.MILLIMETRE)), "IFCQUANTITYAREA").get(0);
    assertThat(own.follow(2).enumeration(3)).isEqualTo("SQUARE_METRE");
    assertThat(assigned.isOmitted(2)).isTrue();
    assertThat(own.number(3)).isEqualTo(assigned.number(3));
  }

  @Test
  void theDrainRunIsConnectedFromGutterToElbow() {
    StepFile file = drained(TinyModel.of("IFC4", TinyModel.Length.METRE));
    Map<Long, String> owner = new TreeMap<>();
    for (StepInstance nest : all(file, "IFCRELNESTS")) {
      for (StepInstance port : nest.followAll(5)) {
        if (port.keyword().equals("IFCDISTRIBUTIONPORT")) {
          owner.put(port.id(), nest.follow(4).text(7));
        }
      }
    }
    List<String> path = new ArrayList<>();
    for (StepInstance rel : all(file, "IFCRELCONNECTSPORTS")) {
      assertThat(rel.follow(4).enumeration(7)).isEqualTo("SOURCE");
      assertThat(rel.follow(5).enumeration(7)).isEqualTo("SINK");
      path.add(owner.get(rel.ref(4)) + " > " + owner.get(rel.ref(5)));
    }
    assertThat(path)
        .containsExactly(
            SampleField.id("gutter-1") + " > " + SampleField.id("outlet-1"),
            SampleField.id("outlet-1") + " > " + SampleField.id("downspout-1"),
            SampleField.id("downspout-1") + " > " + SampleField.id("elbow-1"));
  }

  @ParameterizedTest
  @CsvSource({"METRE", "FOOT"})
  void theSlopeOfAGutterIsAnAngleInTheModelsUnit(TinyModel.Length length) {
    StepFile file = drained(TinyModel.of("IFC4", length));
    StepInstance slope =
        all(file, "IFCPROPERTYSINGLEVALUE").stream()
            .filter(p -> p.text(0).equals("Slope"))
            .findFirst()
            .orElseThrow();
    // 1:96 is 0.010416 rad (arc tangent), or 0.5968095°.
    double expected = length == TinyModel.Length.FOOT ? 0.5968095 : 0.0104163;
    assertThat(slope.number(2)).isCloseTo(expected, within(1e-6));
  }

  @Test
  void coordinatesWithinTheAssemblyAreSmall() {
    StepFile file = drained(TinyModel.of("IFC4", TinyModel.Length.METRE));
    StepInstance assembly = all(file, "IFCELEMENTASSEMBLY").get(0);
    long placement = assembly.ref(5);
    List<StepInstance> parts =
        all(file, "IFCLOCALPLACEMENT").stream()
            .filter(p -> !p.isOmitted(0) && p.ref(0) == placement)
            .toList();
    assertThat(parts).hasSameSizeAs(SampleField.layout().parts());
    for (StepInstance part : parts) {
      for (double c : part.follow(1).follow(0).numbers(0)) {
        assertThat(Math.abs(c)).isLessThan(6);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"IFC2X3", "IFC4", "IFC4X3_ADD2"})
  void twoFieldsShareTypesAndBillButHaveTheirOwnAssemblies(String schema) {
    TinyModel model = TinyModel.of(schema, TinyModel.Length.METRE);
    List<FieldLayout> fields = List.of(SampleField.layout(), SampleField.layout("deck-1/field-2"));
    WriteBack.Written written = Drained.of(model.bytes(), fields);
    BlockCheck.require(model.bytes(), written.bytes());
    StepFile file = StepFile.of(written.bytes(), "drained.ifc");
    assertThat(SchemaTest.findings(StandardSchemas.of(schema), file, 0)).isEmpty();
    assertThat(all(file, "IFCELEMENTASSEMBLY")).hasSize(2);
    assertThat(all(file, "IFCRELAGGREGATES")).hasSize(4);
    assertThat(all(file, "IFCPLATETYPE")).hasSize(1);
    assertThat(all(file, "IFCCOSTSCHEDULE")).hasSize(1);
    assertThat(written.globalIds().values()).doesNotHaveDuplicates().hasSize(30);
  }

  @Test
  void eachLineOfTheBillHasItsQuantityAndTheElementsItCounts() {
    StepFile file = drained(TinyModel.of("IFC4", TinyModel.Length.MILLIMETRE));
    List<String> lines = new ArrayList<>();
    for (StepInstance item : all(file, "IFCCOSTITEM")) {
      for (StepInstance quantity : item.followAll(8)) {
        lines.add(item.text(3) + " = " + quantity.keyword() + " " + quantity.number(3));
      }
    }
    // Metres are millimetres in this model; its square metres stay.
    assertThat(lines)
        .containsExactly(
            "2 sheet = IFCQUANTITYCOUNT 2.0",
            "6.25 m = IFCQUANTITYLENGTH 6250.0",
            "0.15 m² = IFCQUANTITYAREA 0.15");
    List<String> counted = new ArrayList<>();
    for (StepInstance rel : all(file, "IFCRELASSIGNSTOCONTROL")) {
      counted.add(rel.follow(6).text(2) + " < " + rel.followAll(4).get(0).text(2));
    }
    assertThat(counted).contains("Bent pan < PAN-1", "Bent rail < SIDE-RAIL-1").hasSize(3);
  }

  @Test
  void aBillThatCountsPartOfAPieceIsRefused() {
    TinyModel model = TinyModel.of("IFC4", TinyModel.Length.METRE);
    BillLine half =
        new BillLine("pan", "Pan", "sheet", 2.5, BillLine.QuantityKind.COUNT, List.of());
    IfcModel ifc = IfcModel.of(StepFile.of(model.bytes(), "deck.ifc"));
    assertThatThrownBy(
            () ->
                WriteBack.drained(
                    ifc,
                    SampleField.of(List.of(SampleField.layout())),
                    List.of(half),
                    SampleField.provenance()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("2.5 of pan");
  }

  @Test
  void aBodyInAStretchedFrameIsRefused() {
    Extrusion stretched =
        Extrusion.straight(Transform.scaling(1.001), Outline.rectangle(0, 0, 1, 1), 1);
    assertThatThrownBy(() -> StandardSweep.of(stretched))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("not rigid");
  }

  @Test
  void aDesignWithoutPartsAddsNothing() {
    TinyModel model = TinyModel.of("IFC4", TinyModel.Length.METRE);
    FieldLayout s = SampleField.layout();
    FieldLayout empty =
        new FieldLayout(
            s.deck(), s.field(), s.storey(), 0, 0, 0, "", Words.of(""), List.of(), List.of());
    WriteBack.Written written =
        WriteBack.drained(
            IfcModel.of(StepFile.of(model.bytes(), "deck.ifc")),
            SampleField.of(List.of(empty)),
            List.of(),
            SampleField.provenance());
    assertThat(written.bytes()).isEqualTo(model.bytes());
    assertThat(written.instances()).isZero();
  }

  @Test
  void twoPartsWithOneIdAreRefusedByName() {
    TinyModel model = TinyModel.of("IFC4", TinyModel.Length.METRE);
    List<FieldLayout> twice = List.of(SampleField.layout(), SampleField.layout());
    assertThatThrownBy(() -> Drained.of(model.bytes(), twice))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("two parts have the id deck-1/field-1/pan-1");
  }

  @Test
  void aBillForAPartThatIsNotLaidOutIsRefusedByName() {
    TinyModel model = TinyModel.of("IFC4", TinyModel.Length.METRE);
    FieldLayout s = SampleField.layout();
    List<Part> some = s.parts().stream().filter(p -> !p.id().endsWith("/pan-1")).toList();
    FieldLayout fewer =
        new FieldLayout(
            s.deck(), s.field(), s.storey(), 0, 0, 0, "", Words.of(""), some, List.of());
    assertThatThrownBy(() -> Drained.of(model.bytes(), List.of(fewer)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("deck-1/field-1/pan-1");
  }

  @Test
  void anAssemblyWhoseMarksAnotherProgramDroppedIsNotAddedAgain() {
    TinyModel model = TinyModel.of("IFC4", TinyModel.Length.METRE);
    String drained = new String(Drained.of(model).bytes(), StandardCharsets.UTF_8);
    byte[] resaved = drained.replaceAll("/\\*.*?\\*/", "").getBytes(StandardCharsets.UTF_8);
    assertThatThrownBy(() -> Drained.of(resaved, List.of(SampleField.layout())))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("already holds this assembly");
  }

  @Test
  void anEarlierDesignMustBeStrippedFirst() {
    TinyModel model = TinyModel.of("IFC4", TinyModel.Length.METRE);
    byte[] drained = Drained.of(model).bytes();
    assertThatThrownBy(() -> Drained.of(drained, List.of(SampleField.layout())))
        .hasMessageContaining("strip it");
  }
}
