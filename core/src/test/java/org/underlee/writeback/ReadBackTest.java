package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.ifc.IfcModel;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.step.StepFile;

/** What was written, read again by the program's own reader. */
class ReadBackTest {
  /**
   * The reader rounds the corners of an element with openings to steps of 2⁻²⁰ m, about a
   * micrometre: each face may be off by half of one.
   */
  private static final double CUT_STEP_METRES = 0x1p-20;

  static Stream<TinyModel> models() {
    return EveryModelTest.models();
  }

  @ParameterizedTest
  @MethodSource("models")
  void everyPartIsWhereItWasLaidOutWithItsVolume(TinyModel tiny) {
    WriteBack.Written written = Drained.of(tiny);
    IfcModel model = IfcModel.of(StepFile.of(written.bytes(), "drained.ifc"));
    assertThat(model.notMeasured()).isEmpty();
    assertEveryPart(model, written.globalIds());
  }

  static void assertEveryPart(IfcModel model, Map<String, String> globalIds) {
    Map<String, BuildingElement> elements =
        model.elements().stream()
            .collect(Collectors.toMap(BuildingElement::globalId, e -> e, (a, b) -> a));
    for (Part part : SampleField.layout().parts()) {
      if (!part.bodies().isEmpty()) {
        BuildingElement element = elements.get(globalIds.get(part.id()));
        assertThat(element).as(part.id()).isNotNull();
        assertSameShape(part, element);
      }
    }
  }

  private static void assertSameShape(Part part, BuildingElement element) {
    Mesh laidOut = part.mesh();
    double step = part.kind() == PartKind.COLLAR_PIECE ? CUT_STEP_METRES : 0;
    double volume = part.volume();
    assertThat(element.shape().volume())
        .as(part.id())
        .isCloseTo(volume, within(1e-6 * volume + step / 2 * surface(laidOut)));
    Box expected = laidOut.bounds();
    Box found = element.shape().bounds();
    assertThat(found.min().distance(expected.min())).as(part.id()).isLessThan(1e-7 + step);
    assertThat(found.max().distance(expected.max())).as(part.id()).isLessThan(1e-7 + step);
  }

  private static double surface(Mesh mesh) {
    double area = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      area += mesh.areaNormal(t).length() / 2;
    }
    return area;
  }
}
