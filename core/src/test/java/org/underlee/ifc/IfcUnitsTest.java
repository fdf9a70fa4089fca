package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.underlee.ifc.MeshAssert.assertBox;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.finding.InputException;
import org.underlee.finding.Level;

class IfcUnitsTest {
  @ParameterizedTest
  @CsvSource({
    "$,METRE,1",
    ".MILLI.,MILLIMETRE,0.001",
    ".CENTI.,CENTIMETRE,0.01",
    ".DECI.,DECIMETRE,0.1",
    ".KILO.,KILOMETRE,1000"
  })
  void metresWithAnyPrefixAreKnown(String prefix, String name, double metres) {
    IfcUnits units = IfcText.of("IFCSIUNIT(*,.LENGTHUNIT.," + prefix + ",.METRE.)").model().units();
    assertThat(units.lengthName()).isEqualTo(name);
    assertThat(units.metresPerLengthUnit()).isEqualTo(metres);
  }

  /** The international inch and foot, 1959; the US survey foot is 1200/3937 m. */
  @ParameterizedTest
  @CsvSource({
    "FOOT,304.8,MILLI,0.3048",
    "inch,25.4,MILLI,0.0254",
    "US SURVEY FOOT,30.480060960121924,CENTI,0.30480060960121924"
  })
  void convertedUnitsComeOutExactly(String name, String factor, String prefix, double metres) {
    IfcText text = IfcText.of("IFCCONVERSIONBASEDUNIT(#5,.LENGTHUNIT.,'" + name + "',#100)");
    text.add("IFCMEASUREWITHUNIT(IFCLENGTHMEASURE(" + factor + "),#101)");
    text.add("IFCSIUNIT(*,.LENGTHUNIT.,." + prefix + ".,.METRE.)");
    IfcUnits units = text.model().units();
    assertThat(units.metresPerLengthUnit()).isEqualTo(metres);
    assertThat(units.lengthName()).isEqualTo(name.toUpperCase(java.util.Locale.ROOT));
  }

  @Test
  void aFootDefinedByInchesIsFollowedDownToMetresAndSizesTheBody() {
    IfcText text = IfcText.of("IFCCONVERSIONBASEDUNIT(#5,.LENGTHUNIT.,'FOOT',#100)");
    text.add("IFCMEASUREWITHUNIT(IFCRATIOMEASURE(12.),#101)");
    text.add("IFCCONVERSIONBASEDUNIT(#5,.LENGTHUNIT.,'INCH',#102)");
    text.add("IFCMEASUREWITHUNIT(IFCLENGTHMEASURE(2.54),#103)");
    text.add("IFCSIUNIT(*,.LENGTHUNIT.,.CENTI.,.METRE.)");
    assertThat(text.model().units().metresPerLengthUnit()).isEqualTo(0.3048);
    assertBox(
        text.shapeOf(text.extrusion(text.rectangle("1.", "2."), "10.")),
        -0.1524,
        -0.3048,
        0,
        0.1524,
        0.3048,
        3.048);
  }

  @Test
  void aUnitInTheFileThatTheProjectDoesNotAssignMeansNothing() {
    IfcText text = IfcText.of(IfcText.MILLIMETRE);
    text.add("IFCSIUNIT(*,.LENGTHUNIT.,$,.METRE.)");
    text.add("IFCUNITASSIGNMENT((#100))");
    assertThat(text.model().units().lengthName()).isEqualTo("MILLIMETRE");
  }

  @Test
  void degreesBecomeRadians() {
    assertThat(IfcText.of(IfcText.METRE).model().units().radiansPerAngleUnit())
        .isEqualTo(Math.PI / 180);
  }

  @Test
  void aMissingLengthUnitIsTakenForMetresAndSaid() {
    IfcModel model = IfcText.of("").model();
    assertThat(model.units().metresPerLengthUnit()).isEqualTo(1);
    assertThat(model.findings())
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.rule().id()).isEqualTo("no-length-unit");
              assertThat(f.level()).isEqualTo(Level.WARNING);
            });
    assertThat(IfcText.of(IfcText.METRE).model().findings()).isEmpty();
  }

  @Test
  void aUnitDefinedByItselfIsRefused() {
    IfcText text = IfcText.of("IFCCONVERSIONBASEDUNIT(#5,.LENGTHUNIT.,'ELL',#100)");
    text.add("IFCMEASUREWITHUNIT(IFCLENGTHMEASURE(2.),#3)");
    assertThatThrownBy(text::model)
        .isInstanceOf(InputException.class)
        .hasMessageContaining("#3: IFCCONVERSIONBASEDUNIT: this unit is defined by itself");
  }
}
