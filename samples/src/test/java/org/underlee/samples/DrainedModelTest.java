package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.bay.Bay;
import org.underlee.bay.FieldBays;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.writeback.Strip;

/** What design writes, judged by its bytes and by a reader that shares nothing with ours. */
class DrainedModelTest {
  /** Design, section 5 and common practice: 1/8 in per ft. */
  private static final double LEAST_FALL = 1.0 / 96;

  /**
   * The reader's vertices are single floats: this is the slope they can tell over a short piece.
   */
  private static final double FLOAT_SLOPE = 2e-5;

  @TempDir Path folder;

  /** Each sample as committed, and in the other schemas, units and places. */
  static Stream<Arguments> models() {
    List<Arguments> all = new ArrayList<>();
    List<Mix> grid = Mix.grid();
    for (SampleDeck sample : SampleDecks.all()) {
      all.add(Arguments.of(sample, sample.ownMix()));
      for (int i = 0; i < grid.size(); i += 7) {
        all.add(Arguments.of(sample, grid.get(i)));
      }
    }
    return all.stream();
  }

  @ParameterizedTest(name = "{0} as {1}")
  @MethodSource("models")
  void theDesignersBytesStayAndStripGivesThemBack(SampleDeck sample, Mix mix) {
    byte[] original = IfcEmitter.emit(sample, mix);
    Design design = design(original);
    byte[] drained = design.written().bytes();
    int block = Arrays.mismatch(original, drained);
    int tail = original.length - block;
    assertThat(Arrays.copyOfRange(drained, drained.length - tail, drained.length))
        .isEqualTo(Arrays.copyOfRange(original, block, original.length));
    Strip.Stripped stripped = Strip.original(drained).orElseThrow();
    assertThat(stripped.bytes()).isEqualTo(original);
    assertThat(stripped.exact()).isTrue();
  }

  @ParameterizedTest(name = "{0} as {1}")
  @MethodSource("models")
  void designingTwiceGivesTheSameBytesAndADesignOnADrainedModelReplacesIt(
      SampleDeck sample, Mix mix) {
    byte[] original = IfcEmitter.emit(sample, mix);
    byte[] once = design(original).written().bytes();
    assertThat(design(original).written().bytes()).isEqualTo(once);
    assertThat(design(once).written().bytes()).isEqualTo(once);
  }

  @Test
  void anIndependentReaderFindsEveryPartAndEveryPanFallsInsideItsBay() throws Exception {
    assumeTrue(WebIfc.nodeAvailable(), WebIfc.SKIPPED);
    Map<Path, Design> designs = new LinkedHashMap<>();
    for (Arguments model : models().toList()) {
      byte[] original = IfcEmitter.emit((SampleDeck) model.get()[0], (Mix) model.get()[1]);
      write(design(original), designs);
    }
    for (Kit kit : KitReader.allBuiltIn()) {
      for (SampleDeck sample : SampleDecks.all()) {
        write(design(IfcEmitter.emit(sample, sample.ownMix()), kit), designs);
      }
    }
    Map<Path, Map<String, WebIfc.Product>> read =
        WebIfc.measure(List.copyOf(designs.keySet()), "IFCPLATE").stream()
            .collect(
                Collectors.groupingBy(
                    WebIfc.Product::file, Collectors.toMap(WebIfc.Product::globalId, p -> p)));
    designs.forEach((file, design) -> parts(design, read.get(file)));
  }

  private void write(Design design, Map<Path, Design> designs) throws IOException {
    Path file = folder.resolve("drained-" + designs.size() + ".ifc");
    Files.write(file, design.written().bytes());
    designs.put(file, design);
  }

  private static void parts(Design design, Map<String, WebIfc.Product> read) {
    for (Part part : design.layout().parts()) {
      if (!part.bodies().isEmpty()) {
        WebIfc.Product product = read.get(design.written().globalIds().get(part.id()));
        assertThat(product).as("part %s in the independent reader", part.id()).isNotNull();
        assertThat(product.volume())
            .as("volume of %s", part.id())
            .isCloseTo(part.volume(), within(part.volume() * 1e-3));
        if (part.kind() == PartKind.PAN || part.kind() == PartKind.COLLAR_PIECE) {
          pan(design, part, product.triangles());
        }
      }
    }
  }

  private static void pan(Design design, Part part, double[] triangles) {
    FieldBays field =
        design.survey().bays().stream()
            .filter(b -> b.field().id().equals(part.field()))
            .findFirst()
            .orElseThrow();
    Bay bay =
        field.bays().stream()
            .filter(b -> b.id().equals(part.bay().orElseThrow()))
            .findFirst()
            .orElseThrow();
    Transform frame = field.field().frame();
    int floors = 0;
    for (int t = 0; t < triangles.length; t += 9) {
      Vec3[] p = new Vec3[3];
      for (int k = 0; k < 3; k++) {
        int at = t + 3 * k;
        p[k] = frame.toLocal(new Vec3(triangles[at], triangles[at + 1], triangles[at + 2]));
        inside(bay, p[k], part);
      }
      floors += floorFalls(p, part) ? 1 : 0;
    }
    assertThat(floors).as("floor triangles of %s", part.id()).isPositive();
  }

  private static void inside(Bay bay, Vec3 p, Part part) {
    double reach = 1e-4;
    assertThat(p.x())
        .as("across in %s", part.id())
        .isBetween(bay.leftFace().at(p.y()) - reach, bay.rightFace().at(p.y()) + reach);
    assertThat(p.y())
        .as("along in %s", part.id())
        .isBetween(bay.stretch().from() - reach, bay.stretch().to() + reach);
  }

  /** Faces that look up and are no edge of a sheet fall toward the gutter; the rest is no floor. */
  private static boolean floorFalls(Vec3[] p, Part part) {
    Vec3 normal = p[1].minus(p[0]).cross(p[2].minus(p[0]));
    boolean floor = normal.length() > 0.01 && normal.z() > 0.9 * normal.length();
    if (floor) {
      assertThat(normal.y() / normal.z())
          .as("fall measured on %s", part.id())
          .isGreaterThanOrEqualTo(LEAST_FALL - FLOAT_SLOPE);
    }
    return floor;
  }

  private static Design design(byte[] model) {
    return design(model, KitReader.builtIn());
  }

  private static Design design(byte[] model, Kit kit) {
    return DeckRun.design(DeckRun.survey(model, "deck.ifc"), Scope.OUTSIDE, kit);
  }

  /**
   * Common practice: an 8 ft clear run at 1/8 in per ft falls 1 in; rails stop 1 in short of the
   * clear run, pans 2 in shorter than rails. The deck's posts stand 1 in out from its rim, so that
   * the run to them is an inch less than the run to the rim.
   */
  @Test
  void anEightFootRunFallsOneInchWithRailsOfSevenElevenAndPansOfSevenNine() {
    SampleDeck sample = SampleDecks.plain(2438.4 + 25.4, 406.4, 5);
    Design design = design(IfcEmitter.emit(sample, Mix.PLAIN));
    double inch = 0.0254;
    assertThat(design.layout().fields()).singleElement();
    assertThat(design.layout().fields().get(0).run()).isCloseTo(96 * inch, within(1e-6));
    assertThat(design.layout().fields().get(0).run() * design.layout().fields().get(0).fall())
        .isCloseTo(inch, within(1e-6));
    assertThat(lengths(design, PartKind.SIDE_RAIL))
        .hasSize(8)
        .allSatisfy(l -> assertThat(l).isCloseTo(95 * inch, within(1e-6)));
    assertThat(lengths(design, PartKind.PAN))
        .hasSize(4)
        .allSatisfy(l -> assertThat(l).isCloseTo(93 * inch, within(1e-6)));
  }

  private static List<Double> lengths(Design design, PartKind kind) {
    return design.layout().parts().stream()
        .filter(p -> p.kind() == kind)
        .map(Part::length)
        .toList();
  }
}
