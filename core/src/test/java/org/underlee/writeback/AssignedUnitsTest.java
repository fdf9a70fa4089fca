package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.step.StepFile;

/** A quantity in a unit that was taken for another is wrong by a factor that nobody sees. */
class AssignedUnitsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "AREAUNIT | IFCSIUNIT(*,.AREAUNIT.,$,.SQUARE_METRE.) | 1",
        "AREAUNIT | IFCSIUNIT(*,.AREAUNIT.,.MILLI.,.SQUARE_METRE.) |",
        "AREAUNIT | IFCSIUNIT(*,.VOLUMEUNIT.,$,.CUBIC_METRE.) |",
        "AREAUNIT | IFCDERIVEDUNIT((),.AREAUNIT.,$) |",
        "VOLUMEUNIT | IFCSIUNIT(*,.VOLUMEUNIT.,$,.CUBIC_METRE.) | 1",
        "MASSUNIT | IFCSIUNIT(*,.MASSUNIT.,$,.GRAM.) | 0.001",
        "MASSUNIT | IFCSIUNIT(*,.MASSUNIT.,.KILO.,.GRAM.) | 1",
        "MASSUNIT | IFCSIUNIT(*,.MASSUNIT.,.MEGA.,.GRAM.) |",
        // NIST SP 811, appendix B: a square foot in square metres, a pound in kilograms
        "AREAUNIT | IFCCONVERSIONBASEDUNIT($,.AREAUNIT.,'SQUARE FOOT',#4) | 0.09290304",
        "MASSUNIT | IFCCONVERSIONBASEDUNIT($,.MASSUNIT.,'POUND',#6) | 0.45359237",
        "MASSUNIT | IFCCONVERSIONBASEDUNIT($,.MASSUNIT.,'HUNDREDWEIGHT',#10) | 50",
        "AREAUNIT | IFCCONVERSIONBASEDUNIT($,.AREAUNIT.,'SQUARE YARD',#8) |"
      })
  void onlyAUnitWhoseSizeIsCertainIsTaken(String type, String unit, Double size) {
    assertThat(of(unit).inSi(type))
        .isEqualTo(size == null ? OptionalDouble.empty() : OptionalDouble.of(size));
  }

  @Test
  void aProjectThatAssignsNoUnitsHasNone() {
    assertThat(project("#1=IFCPROJECT('a',$,$,$,$,$,$,(),$);").inSi("AREAUNIT")).isEmpty();
  }

  private static AssignedUnits of(String unit) {
    return project(
        "#1=IFCPROJECT('a',$,$,$,$,$,$,(),#2);#2=IFCUNITASSIGNMENT((#3));#3="
            + unit
            + ";#4=IFCMEASUREWITHUNIT(IFCAREAMEASURE(0.09290304),#5);"
            + "#5=IFCSIUNIT(*,.AREAUNIT.,$,.SQUARE_METRE.);"
            + "#6=IFCMEASUREWITHUNIT(IFCMASSMEASURE(0.45359237),#7);"
            + "#7=IFCSIUNIT(*,.MASSUNIT.,.KILO.,.GRAM.);"
            + "#8=IFCMEASUREWITHUNIT(IFCAREAMEASURE(9.),#9);"
            + "#10=IFCMEASUREWITHUNIT(IFCMASSMEASURE(50000.),#11);"
            + "#11=IFCSIUNIT(*,.MASSUNIT.,$,.GRAM.);"
            + "#9=IFCCONVERSIONBASEDUNIT($,.AREAUNIT.,'SQUARE FOOT',#4);");
  }

  private static AssignedUnits project(String data) {
    String text =
        "ISO-10303-21;HEADER;FILE_DESCRIPTION((''),'2;1');"
            + "FILE_NAME('','',(''),(''),'','','');FILE_SCHEMA(('IFC4'));ENDSEC;DATA;"
            + data
            + "ENDSEC;END-ISO-10303-21;";
    StepFile file = StepFile.of(text.getBytes(StandardCharsets.ISO_8859_1), "units.ifc");
    return new AssignedUnits(file.instance(1));
  }
}
