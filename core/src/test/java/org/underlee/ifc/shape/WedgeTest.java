package org.underlee.ifc.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.step.StepFile;

class WedgeTest {
  @Test
  void aWedgeHasHalfTheVolumeOfTheBoxAroundIt() {
    Mesh wedge = read("6.,2.,1.");
    assertThat(wedge.volume()).isCloseTo(6, within(1e-12));
    assertThat(wedge.bounds().min()).isEqualTo(new Vec3(1, 0, 0));
  }

  @Test
  void aWedgeWithoutLengthIsRefusedWithItsNumber() {
    assertThatThrownBy(() -> read("0.,2.,1."))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("#2");
  }

  private static Mesh read(String sizes) {
    String text =
        "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((''),'2;1');\nFILE_NAME('','',(''),(''),'','','');\n"
            + "FILE_SCHEMA(('IFC4'));\nENDSEC;\nDATA;\n#1=IFCCARTESIANPOINT((1.,0.,0.));\n#2=EXAMPLEWEDGE(#1,"
            + sizes
            + ");\nENDSEC;\nEND-ISO-10303-21;\n";
    return Wedge.read(
        StepFile.of(text.getBytes(StandardCharsets.US_ASCII), "wedge.ifc").instance(2));
  }
}
