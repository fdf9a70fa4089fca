package org.underlee.clash;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Bodies;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.layout.PartKind;

/** A cube of 100 mm around the origin, and a gutter at a distance from it. */
class ClearancesTest {
  private static final double SIZE = 0.1;
  private static final double NEAR = 0.001;

  private static BuildingElement element(String ifcClass, String name, Mesh shape) {
    return new BuildingElement(1, "0X", ifcClass, name, "", "", Optional.empty(), shape);
  }

  private static Mesh cube(double x, double y, double z) {
    return Bodies.box(SIZE, SIZE, SIZE).transformed(Transform.translation(new Vec3(x, y, z)));
  }

  private static List<Cause> found(Theirs thing, Mesh gutter) {
    Ours part =
        Ours.of("deck-1/field-1/gutter-1", PartKind.GUTTER, element("IfcPipeSegment", "", gutter));
    return ClashFinder.find(List.of(), List.of(part), List.of(thing)).clashes().stream()
        .map(Clash::cause)
        .toList();
  }

  /** IRC M1502.3, G2427.8; NEC 110.26(A), 410.116(A)(1); IPC 708.1.9; the rest common practice. */
  @ParameterizedTest
  @CsvSource({
    "IfcFlowTerminal, Dryer vent, 0.9144",
    "IfcFlowTerminal, Direct vent, 1.2192",
    "IfcElectricDistributionBoard, Main, 0.9144",
    "IfcFlowController, Breaker panel 200 A, 0.9144",
    "IfcFlowMeter, M1, 0.9144",
    "IfcFlowTerminal, Gas meter, 0.9144",
    "IfcFlowTerminal, Hose bib, 0.1524",
    "IfcValve, V1, 0.05",
    "IfcFlowFitting, Cleanout 4 in, 0.4572",
    "IfcFlowFitting, P-trap, 0.025",
    "IfcDamper, D1, 0.05",
    "IfcFlowFitting, Junction box, 0.025",
    "IfcLightFixture, L1, 0.025",
    "IfcPipeSegment, P1, 0.025",
    "IfcDuctSegment, D1, 0.025"
  })
  void aPartKeepsTheClearanceOfTheKindOfThing(String ifcClass, String name, double clearance) {
    Theirs thing =
        Theirs.of(element(ifcClass, name, cube(0, 0, 0)), Clearances.builtIn(), List.of());
    assertThat(found(thing, cube(SIZE + clearance - NEAR, 0, 0))).containsExactly(Cause.TOO_NEAR);
    assertThat(found(thing, cube(SIZE + clearance + NEAR, 0, 0))).isEmpty();
  }

  /** IRC R311.7.2: 6 ft 8 in over the nosings. */
  @Test
  void aHeadHasRoomOverAStair() {
    Mesh tread = cube(0, 0, 0);
    Clearances clearances = Clearances.builtIn();
    Theirs stair =
        Theirs.of(
            element("IfcStairFlight", "", tread),
            clearances,
            Headroom.over(tread, clearances.headroom()));
    assertThat(found(stair, cube(0, 0, 2.032 + SIZE - 0.01))).containsExactly(Cause.HEADROOM);
    assertThat(found(stair, cube(0, 0, 2.032 + SIZE + 0.01))).isEmpty();
    assertThat(found(stair, cube(SIZE + 0.01, 0, 1))).isEmpty();
  }

  /** Drawn 0.4 mm into each other is contact; that says nothing about the clearance. */
  @Test
  void aToleranceIsNotAClearance() {
    BuildingElement pipe = element("IfcPipeSegment", "", cube(0, 0, 0));
    Theirs thing = Theirs.of(pipe, Clearances.builtIn(), List.of());
    assertThat(found(thing, cube(SIZE - 0.0004, 0, 0))).containsExactly(Cause.TOO_NEAR);
    assertThat(found(thing, cube(SIZE - 0.0016, 0, 0))).containsExactly(Cause.INTERSECT);
    BuildingElement beam = element("IfcBeam", "", cube(0, 0, 0));
    Theirs framing = Theirs.of(beam, Clearances.builtIn(), List.of());
    assertThat(found(framing, cube(SIZE - 0.004, 0, 0))).isEmpty();
    assertThat(found(framing, cube(SIZE + 0.0001, 0, 0))).isEmpty();
    assertThat(found(framing, cube(SIZE - 0.006, 0, 0))).containsExactly(Cause.INTERSECT);
  }
}
