package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.underlee.finding.InputException;
import org.underlee.step.StepFile;

/** Models damaged at random, by seed: each is read, or refused, and nothing else. */
class IfcDamageTest {
  private static final int TRIES = 600;
  private static final String CHARACTERS = "0123456789.,()$*#'-E;= ";

  private static byte[] model() {
    IfcText text = IfcText.of(IfcText.MILLIMETRE);
    String circle = text.add("IFCCIRCLEPROFILEDEF(.AREA.,$,$,50.)");
    String block = text.extrusion(text.rectangle("100.", "200."), "3000.");
    String tool = text.extrusion(circle, "9000.");
    String cut = text.add("IFCBOOLEANRESULT(.DIFFERENCE.," + block + "," + tool + ")");
    String inner = text.placement("#21", text.axes("1.,2.,3.", "0.,0.,1.", "0.,1.,0."));
    text.beam(inner, cut);
    String outline = text.polyline("0.,0.", "9.,0.", "9.,9.", "4.,3.", "0.,9.");
    String profile = text.add("IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$," + outline + ")");
    String map =
        text.add("IFCREPRESENTATIONMAP(#11," + text.body(text.extrusion(profile, "5.")) + ")");
    String operator = text.add("IFCCARTESIANTRANSFORMATIONOPERATOR3D($,$,#10,2.,$)");
    text.beam("#21", text.add("IFCMAPPEDITEM(" + map + "," + operator + ")"));
    String points =
        text.add("IFCCARTESIANPOINTLIST3D(((0.,0.,0.),(3.,0.,0.),(0.,3.,0.),(0.,0.,3.)))");
    text.beam(
        "#21",
        text.add(
            "IFCTRIANGULATEDFACESET(" + points + ",$,.T.,((1,2,3),(1,2,4),(2,3,4),(3,1,4)),$)"));
    IfcModel whole = text.model();
    assertThat(whole.notMeasured()).isEmpty();
    assertThat(whole.elements()).hasSize(3);
    return whole.step().bytes().clone();
  }

  @Test
  void aDamagedModelIsReadOrRefusedAndNothingElse() {
    byte[] whole = model();
    Random random = new Random(7);
    int refused = 0;
    int notMeasured = 0;
    for (int i = 0; i < TRIES; i++) {
      byte[] bytes = whole.clone();
      for (int k = random.nextInt(3); k >= 0; k--) {
        bytes[random.nextInt(bytes.length)] =
            (byte) CHARACTERS.charAt(random.nextInt(CHARACTERS.length()));
      }
      try {
        IfcModel model = IfcModel.of(StepFile.of(bytes, "damaged.ifc"));
        assertThat(model.elements()).noneMatch(e -> e.shape().isEmpty());
        notMeasured += model.notMeasured().size();
      } catch (InputException e) {
        refused++;
      }
    }
    assertThat(refused).isPositive();
    assertThat(notMeasured).isPositive();
  }
}
