package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.finding.InputException;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Storey;
import org.underlee.step.StepTexts;

class IfcModelTest {
  private final IfcText text = IfcText.of(IfcText.MILLIMETRE);

  private String joist() {
    return text.beam("$", text.extrusion(text.rectangle("40.", "200."), "3000."));
  }

  private static long number(String reference) {
    return Long.parseLong(reference.substring(1));
  }

  @ParameterizedTest
  @CsvSource({"IFC2X3,IFC2X3", "IFC2X3_TC1,IFC2X3", "IFC4,IFC4", "IFC4X3_ADD2,IFC4X3"})
  void theThreeEditionsAreRead(String name, IfcSchema schema) {
    assertThat(IfcText.of(name, IfcText.METRE).model().schema()).isEqualTo(schema);
  }

  @Test
  void anotherSchemaIsRefusedAndTheReadOnesAreNamed() {
    assertThatThrownBy(IfcText.of("IFC2X2_FINAL", IfcText.METRE)::model)
        .isInstanceOfSatisfying(
            InputException.class,
            e -> {
              assertThat(e).hasMessageContaining("the schema IFC2X2_FINAL is not read");
              assertThat(e.advice()).contains("IFC2X3, IFC4 and IFC4X3");
            });
  }

  @Test
  void aModelWithoutAProjectIsRefused() {
    assertThatThrownBy(() -> IfcModel.of(StepTexts.data("#1=IFCWALL($,$,$,$,$,$,$,$);")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no IfcProject");
  }

  @Test
  void theProjectAndItsContextsAreKnown() {
    IfcModel model = text.model();
    assertThat(model.projectGlobalId()).isEqualTo("0P00000000000000000001");
    assertThat(model.projectId()).isEqualTo(1);
    assertThat(model.bodyContextId()).hasValue(IfcText.BODY_CONTEXT);
    assertThat(model.ownerHistoryId()).isEmpty();
    text.add("IFCOWNERHISTORY($,$,$,.NOCHANGE.,$,$,$,0)");
    assertThat(text.model().ownerHistoryId()).hasValue(100);
  }

  @Test
  void anElementCarriesItsNamesInTheStandardsSpelling() {
    String shape = text.shape(text.body(text.extrusion(text.rectangle("1.", "1."), "1.")));
    text.add(
        "IFCBEAMSTANDARDCASE('0B00000000000000000001',$,'Joist \\X2\\00E9\\X0\\',$,$,$,"
            + shape
            + ",$,.JOIST.)");
    BuildingElement beam = text.only();
    assertThat(beam.ifcClass()).isEqualTo("IfcBeamStandardCase");
    assertThat(beam.name()).isEqualTo("Joist \u00E9");
    assertThat(beam.globalId()).isEqualTo("0B00000000000000000001");
    assertThat(beam.predefinedType()).isEqualTo("JOIST");
    assertThat(beam.typeName()).isEmpty();
    assertThat(beam.storey()).isEmpty();
  }

  @Test
  void thePredefinedTypeOfATypeStandsInForAnAbsentOne() {
    String shape = text.shape(text.body(text.extrusion(text.rectangle("1.", "1."), "1.")));
    String beam = text.add("IFCBEAM('b',$,$,$,$,$," + shape + ",$,.NOTDEFINED.)");
    String type = text.add("IFCBEAMTYPE('t',$,'2x8',$,$,$,$,$,$,.JOIST.)");
    text.add("IFCRELDEFINESBYTYPE('r',$,$,$,(" + beam + ")," + type + ")");
    assertThat(text.only().predefinedType()).isEqualTo("JOIST");
    assertThat(text.only().typeName()).isEqualTo("2x8");
  }

  @Test
  void theAttributeThatIsNoPredefinedTypeInTheOldEditionIsNotTakenForOne() {
    for (Map.Entry<String, String> expected : Map.of("IFC2X3", "", "IFC4", "ELEMENT").entrySet()) {
      IfcText old = IfcText.of(expected.getKey(), IfcText.METRE);
      String shape = old.shape(old.body(old.extrusion(old.rectangle("1.", "1."), "1.")));
      // In IFC2X3 this is CompositionType.
      old.add("IFCBUILDINGELEMENTPROXY('p',$,$,$,$,$," + shape + ",$,.ELEMENT.)");
      assertThat(old.only().predefinedType()).isEqualTo(expected.getValue());
    }
  }

  @Test
  void theBodyIsTakenBeforeOtherRepresentations() {
    String axis = text.add("IFCSHAPEREPRESENTATION(#8,'Axis','Curve3D',(#10))");
    String box = text.add("IFCSHAPEREPRESENTATION(#8,'Box','BoundingBox',(#10))");
    String body = text.body(text.extrusion(text.rectangle("1000.", "1000."), "1000."));
    text.add("IFCBEAM('b',$,$,$,$,$," + text.shape(axis + "," + box + "," + body) + ",$,$)");
    assertThat(text.only().shape().volume()).isEqualTo(1);
  }

  @Test
  void anElementWithOnlyAnAxisIsNotMeasuredAndOneWithoutRepresentationIsNeither() {
    String axis = text.add("IFCSHAPEREPRESENTATION(#8,'Axis','Curve3D',(#10))");
    text.add("IFCBEAM('axis only',$,$,$,$,$," + text.shape(axis) + ",$,$)");
    text.add("IFCROOF('no shape',$,$,$,$,$,$,$,$)");
    IfcModel model = text.model();
    assertThat(model.elements()).isEmpty();
    assertThat(model.notMeasured())
        .singleElement()
        .satisfies(
            n -> {
              assertThat(n.globalId()).isEqualTo("axis only");
              assertThat(n.why()).contains("no representation is a body; there is only [Axis]");
            });
  }

  @Test
  void spacesAndOpeningsAreNoElements() {
    String shape = text.shape(text.body(text.extrusion(text.rectangle("1.", "1."), "1.")));
    text.add("IFCSPACE('s',$,$,$,$,$," + shape + ",$,.ELEMENT.,$,$)");
    text.add("IFCOPENINGELEMENT('o',$,$,$,$,$," + shape + ",$,$)");
    assertThat(text.model().elements()).isEmpty();
    assertThat(text.model().notMeasured()).isEmpty();
  }

  @Test
  void aPartInheritsTheStoreyOfTheWholeAtAnyDepth() {
    String joist = joist();
    String inner = text.add("IFCELEMENTASSEMBLY('i',$,$,$,$,$,$,$,$,$)");
    String outer = text.add("IFCELEMENTASSEMBLY('o',$,$,$,$,$,$,$,$,$)");
    text.add("IFCRELAGGREGATES('a',$,$,$," + inner + ",(" + joist + "))");
    text.add("IFCRELAGGREGATES('b',$,$,$," + outer + ",(" + inner + "))");
    text.add("IFCRELCONTAINEDINSPATIALSTRUCTURE('c',$,$,$,(" + outer + "),#20)");
    assertThat(text.only().storey()).contains(new Storey("0S00000000000000000001", "Deck", 0));
  }

  @Test
  void aPartThatContainsItsWholeHasNoStorey() {
    String joist = joist();
    String whole = text.add("IFCELEMENTASSEMBLY('i',$,$,$,$,$,$,$,$,$)");
    text.add("IFCRELAGGREGATES('a',$,$,$," + whole + ",(" + joist + "))");
    text.add("IFCRELAGGREGATES('b',$,$,$," + joist + ",(" + whole + "))");
    assertThat(text.only().storey()).isEmpty();
  }

  @Test
  void theElementsOwnPropertyComesBeforeItsTypes() {
    String joist = joist();
    String own = set("Pset_BeamCommon", "Span", "IFCLENGTHMEASURE(3.)");
    String types = set("Pset_BeamCommon", "Span", "IFCLENGTHMEASURE(4.)");
    String more = set("Finish", "Painted", "IFCBOOLEAN(.T.)");
    text.add("IFCRELDEFINESBYPROPERTIES('p',$,$,$,(" + joist + ")," + own + ")");
    String type = text.add("IFCBEAMTYPE('t',$,'2x8',$,$,(" + types + "," + more + "),$,$,$,$)");
    text.add("IFCRELDEFINESBYTYPE('r',$,$,$,(" + joist + ")," + type + ")");
    assertThat(text.model().properties(number(joist)))
        .isEqualTo(
            Map.of("Pset_BeamCommon", Map.of("Span", "3."), "Finish", Map.of("Painted", "TRUE")));
  }

  private String set(String name, String property, String value) {
    String single = text.add("IFCPROPERTYSINGLEVALUE('" + property + "',$," + value + ",$)");
    return text.add("IFCPROPERTYSET('s',$,'" + name + "',$,(" + single + "))");
  }

  @Test
  void materialNamesAreFoundThroughSetsAndUsagesAndTypes() {
    String joist = joist();
    String pine = text.add("IFCMATERIAL('Pine',$,$)");
    String profile = text.add("IFCMATERIALPROFILE($,$," + pine + ",#100,$,$)");
    String profiles = text.add("IFCMATERIALPROFILESET($,$,(" + profile + "),$)");
    String usage = text.add("IFCMATERIALPROFILESETUSAGE(" + profiles + ",$,$)");
    String type = text.add("IFCBEAMTYPE('t',$,'2x8',$,$,$,$,$,$,$)");
    text.add("IFCRELDEFINESBYTYPE('r',$,$,$,(" + joist + ")," + type + ")");
    text.add("IFCRELASSOCIATESMATERIAL('m',$,$,$,(" + type + ")," + usage + ")");
    assertThat(text.model().materials(number(joist))).containsExactly("Pine");
    String glue = text.add("IFCMATERIAL('Glue',$,$)");
    String layers =
        text.add(
            "IFCMATERIALLAYERSET(("
                + text.add("IFCMATERIALLAYER(" + pine + ",1.,$,$,$,$,$)")
                + ","
                + text.add("IFCMATERIALLAYER(" + glue + ",1.,$,$,$,$,$)")
                + "),$,$)");
    text.add("IFCRELASSOCIATESMATERIAL('n',$,$,$,(" + joist + ")," + layers + ")");
    assertThat(text.model().materials(number(joist))).containsExactly("Pine", "Glue");
  }

  @Test
  void aRelationshipThatCannotBeReadIsAFindingAndTheRestIsRead() {
    joist();
    text.add("IFCRELAGGREGATES('a',$,$,$,'oops',(#1))");
    assertThat(text.model().elements()).hasSize(1);
    assertThat(text.model().findings())
        .singleElement()
        .satisfies(f -> assertThat(f.rule().id()).isEqualTo("relationship-unreadable"));
  }
}
