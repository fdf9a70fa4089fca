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
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.ifc.IfcModel;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.step.StepFile;

/** What was written, read again by the program's own reader. */
class ReadBackTest {
  static Stream<TinyModel> models() {
    return WriteBackTest.models();
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
    // The reader does not cut openings, so a collar piece is compared with its hole filled.
    double volume =
        part.kind() == PartKind.COLLAR_PIECE
            ? part.bodies().stream().mapToDouble(ReadBackTest::filled).sum()
            : part.volume();
    assertThat(element.shape().volume()).as(part.id()).isCloseTo(volume, within(1e-6 * volume));
    Box expected = part.mesh().bounds();
    Box found = element.shape().bounds();
    assertThat(found.min().distance(expected.min())).as(part.id()).isLessThan(1e-7);
    assertThat(found.max().distance(expected.max())).as(part.id()).isLessThan(1e-7);
  }

  private static double filled(Extrusion body) {
    return Outline.signedArea(body.section().outer()) * Math.abs(body.sweep().z());
  }
}
