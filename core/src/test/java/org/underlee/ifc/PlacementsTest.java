package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.underlee.ifc.MeshAssert.assertBox;
import static org.underlee.ifc.MeshAssert.assertPoint;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.finding.InputException;
import org.underlee.geom.Transform;

class PlacementsTest {
  private final IfcText text = IfcText.of(IfcText.MILLIMETRE);

  private Transform world(String placement) {
    return text.model().placement(Long.parseLong(placement.substring(1)));
  }

  @Test
  void aPlacementInsideTurnedPlacementsIsComposedOutermostFirst() {
    // Turned a quarter about z at (1000,0,0); inside, 2000 along local x, turned about local x.
    String outer = text.placement("$", text.axes("1000.,0.,0.", "0.,0.,1.", "0.,1.,0."));
    String middle = text.placement(outer, text.axes("2000.,0.,0.", "0.,-1.,0.", "1.,0.,0."));
    String inner = text.placement(middle, text.axes("0.,500.,0.", "", ""));
    Transform world = world(inner);
    assertPoint(world.origin(), 1, 2, 0.5);
    assertPoint(world.x(), 0, 1, 0);
    assertPoint(world.y(), 0, 0, 1);
    assertPoint(world.z(), 1, 0, 0);
  }

  @Test
  void theBodyFollowsItsPlacement() {
    String turned = text.placement("$", text.axes("1000.,0.,500.", "1.,0.,0.", "0.,1.,0."));
    text.beam(turned, text.extrusion(text.rectangle("40.", "200."), "3000."));
    assertBox(text.only().shape(), 1, -0.02, 0.4, 4, 0.02, 0.6);
  }

  @Test
  void axesOutOfSquareAreMadeSquareAboutTheAxis() {
    Transform world = world(text.placement("$", text.axes("0.,0.,0.", "0.,0.,2.", "3.,0.,5.")));
    assertPoint(world.x(), 1, 0, 0);
    assertPoint(world.y(), 0, 1, 0);
    assertThat(world.determinant()).isCloseTo(1, Offset.offset(1e-12));
  }

  @Test
  void aDirectionOfNoLengthStandsForNone() {
    Transform world = world(text.placement("$", text.axes("1.,2.,3.", "", "0.,0.,0.")));
    assertThat(world.x()).isEqualTo(Transform.IDENTITY.x());
  }

  @Test
  void anAxisAlongXWithoutReferenceTakesZ() {
    Transform world = world(text.placement("$", text.axes("0.,0.,0.", "1.,0.,0.", "")));
    assertPoint(world.x(), 0, 0, 1);
    assertPoint(world.z(), 1, 0, 0);
  }

  @Test
  void aReferenceAlongTheAxisIsRefused() {
    String placement = text.placement("$", text.axes("0.,0.,0.", "0.,0.,1.", "0.,0.,-3."));
    assertThatThrownBy(() -> world(placement))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("IFCAXIS2PLACEMENT3D: its axis and its reference direction");
  }

  @Test
  void aPlacementInThePlaneStandsUpright() {
    String axes =
        text.add(
            "IFCAXIS2PLACEMENT2D(" + text.point("5.,7.") + "," + text.direction("0.,1.") + ")");
    Transform world = world(text.placement("$", axes));
    assertPoint(world.origin(), 0.005, 0.007, 0);
    assertPoint(world.x(), 0, 1, 0);
    assertPoint(world.z(), 0, 0, 1);
  }

  @Test
  void aCyclicPlacementIsRefusedWithTheNumbersInTheCycle() {
    String axes = text.axes("0.,0.,0.", "", "");
    text.add("IFCLOCALPLACEMENT(#104," + axes + ")");
    text.add("IFCLOCALPLACEMENT(#102," + axes + ")");
    text.add("IFCLOCALPLACEMENT(#103," + axes + ")");
    text.beam("#104", text.extrusion(text.rectangle("1.", "1."), "1."));
    IfcModel model = text.model();
    assertThat(model.elements()).isEmpty();
    assertThat(model.notMeasured())
        .singleElement()
        .satisfies(n -> assertThat(n.why()).contains("#104 → #103 → #102 → #104"));
  }

  @Test
  void aChainOfTenThousandPlacementsDoesNotOverflow() {
    String axes = text.axes("1.,0.,0.", "", "");
    String placement = text.placement("$", axes);
    for (int i = 1; i < 10_000; i++) {
      placement = text.placement(placement, axes);
    }
    assertPoint(world(placement).origin(), 10, 0, 0);
  }

  /** Axes x = 2 mm upwards and y = 3 mm to the right, offset to their left by 0.5 and 0.25. */
  @Test
  void aPlacementOnAGridIsWhereItsAxesMeetWithTheirOffsets() {
    String up = axis("2.,-9.", "2.,9.", ".T.");
    String right = axis("-9.,3.", "9.,3.", ".T.");
    grid(up, right);
    Transform frame = world(intersection(up, right, "0.5,0.25,4."));
    assertPoint(frame.origin(), 0.010 + 0.002 - 0.0005, 0.003 + 0.00025, 0.004);
    assertPoint(frame.x(), 0, 1, 0);
  }

  @Test
  void aGridAxisOfTheOtherSenseRunsBackwards() {
    String up = axis("2.,-9.", "2.,9.", ".F.");
    String right = axis("-9.,3.", "9.,3.", ".T.");
    grid(up, right);
    Transform frame = world(intersection(up, right, "0.5,0."));
    assertPoint(frame.origin(), 0.010 + 0.002 + 0.0005, 0.003, 0);
    assertPoint(frame.x(), 0, -1, 0);
  }

  private String axis(String from, String to, String sense) {
    return text.add("IFCGRIDAXIS('A'," + text.polyline(from, to) + "," + sense + ")");
  }

  /** Its own placement is 10 mm along x. */
  private void grid(String u, String v) {
    String place = text.placement("$", text.axes("10.,0.,0.", "", ""));
    text.add(
        "IFCGRID('0G00000000000000000001',$,$,$,$," + place + ",$,(" + u + "),(" + v + "),$,$)");
  }

  private String intersection(String u, String v, String offsets) {
    return text.add(
        "IFCGRIDPLACEMENT("
            + text.add("IFCVIRTUALGRIDINTERSECTION((" + u + "," + v + "),(" + offsets + "))")
            + ",$)");
  }

  @ParameterizedTest
  @CsvSource({
    "'IFCGRIDPLACEMENT($,$)', 'attribute 1 should be a reference'",
    "'IFCGRIDPLACEMENT()', 'it names no intersection'",
    "'IFCLINEARPLACEMENT($,$,$)', 'IFCLINEARPLACEMENT is not read as the placement of an object'"
  })
  void aPlacementThatCannotBeReadLeavesTheElementUnmeasuredWithTheReason(
      String placement, String why) {
    text.beam(text.add(placement), text.add("IFCBLOCK(#11,1.,1.,1.)"));
    assertThat(text.model().notMeasured().get(0).why()).contains(why);
  }
}
