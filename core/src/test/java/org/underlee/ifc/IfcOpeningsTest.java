package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;
import static org.underlee.ifc.MeshAssert.assertVolume;

import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Openings in elements, in metres: a wall 6 long, 0.2 thick, 3 high. Its vertices lie on a grid of
 * a micrometre while it is cut, five millionths of its thickness.
 */
class IfcOpeningsTest {
  private static final double GRID_PERCENT = 5e-4;

  private final IfcText text = IfcText.of(IfcText.METRE);

  private String wall() {
    return text.beam("$", text.add("IFCBLOCK(#11,6.,0.2,3.)"));
  }

  private void opening(String element, String placement, String item) {
    String opening =
        text.add(
            "IFCOPENINGELEMENT('0O00000000000000000001',$,$,$,$,"
                + placement
                + ","
                + text.shape(text.body(item))
                + ",$)");
    text.add("IFCRELVOIDSELEMENT('0V00000000000000000001',$,$,$," + element + "," + opening + ")");
  }

  private String at(String origin) {
    return text.placement("$", text.axes(origin, "", ""));
  }

  private void assertCut(double cubicMetres) {
    assertThat(text.only().shape().volume()).isCloseTo(cubicMetres, withPercentage(GRID_PERCENT));
  }

  @Test
  void anOpeningFlushWithTheFacesLeavesAHole() {
    opening(wall(), at("1.,0.,1."), text.add("IFCBLOCK(#11,2.,0.2,1.)"));
    assertCut(0.2 * (18 - 2));
    assertThat(text.only().shape().bounds().size().x()).isCloseTo(6, withPercentage(GRID_PERCENT));
  }

  @Test
  void aDoorToTheFloorAndARecessAreCut() {
    String wall = wall();
    opening(wall, at("1.,-1.,-1."), text.add("IFCBLOCK(#11,1.,9.,3.)"));
    opening(wall, at("3.,0.1,1."), text.add("IFCBLOCK(#11,1.,9.,1.)"));
    assertCut(0.2 * (18 - 2) - 0.1);
  }

  @Test
  void openingsThatOverlapAreCutOnce() {
    String wall = wall();
    opening(wall, at("1.,-1.,1."), text.add("IFCBLOCK(#11,2.,9.,1.)"));
    opening(wall, at("2.,-1.,1."), text.add("IFCBLOCK(#11,2.,9.,1.)"));
    assertCut(0.2 * (18 - 3));
  }

  /** Round holes by seed, apart from each other: each takes its circle. */
  @Test
  void twentyRoundHolesTakeTwentyCircles() {
    String wall = wall();
    Random random = new Random(3);
    double area = 18;
    for (int i = 0; i < 20; i++) {
      double radius = 0.05 + 0.1 * random.nextDouble();
      String foot = (0.3 + 0.57 * (i % 10)) + ",-1.," + (0.5 + 1.5 * (i / 10));
      String axes = text.axes(foot, "0.,1.,0.", "");
      opening(wall, "$", text.add("IFCRIGHTCIRCULARCYLINDER(" + axes + ",9.," + radius + ")"));
      area -= Math.PI * radius * radius;
    }
    assertCut(0.2 * area);
    assertThat(text.model().findings()).isEmpty();
  }

  /** The outline of a U, which is not convex. */
  @Test
  void anOpeningWithAHollowCornerIsCut() {
    String ring =
        text.polyline(
            "1.,1.", "4.,1.", "4.,2.", "3.,2.", "3.,1.5", "2.,1.5", "2.,2.", "1.,2.", "1.,1.");
    String profile = text.add("IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$," + ring + ")");
    String solid =
        text.add(
            "IFCEXTRUDEDAREASOLID("
                + profile
                + ","
                + text.axes("0.,1.,0.", "0.,-1.,0.", "1.,0.,0.")
                + ","
                + text.direction("0.,0.,1.")
                + ",2.)");
    opening(wall(), "$", solid);
    assertCut(0.2 * (18 - 2.5));
  }

  /**
   * Two openings under one sloped roof: a wedge above the diagonal of the wall, and inside of it a
   * solid with a hollow corner that shares faces with the wedge.
   */
  @Test
  void aHollowOpeningThatSharesFacesWithAnotherTakesNothingMore() {
    String wall = wall();
    String faces = "(1,2,4,3)|(3,4,8,7)|(7,8,6,5)|(5,6,2,1)|(8,4,2,6)|";
    opening(wall, "$", wedge("0.,-1.,0.", "0.,1.,0.", faces + "(3,7,5,1)"));
    opening(wall, "$", wedge("0.,-1.,0.", "0.,1.,3.", faces + "(3,5,1)|(3,7,5)"));
    assertCut(0.2 * 9);
  }

  private String wedge(String first, String third, String faces) {
    String points =
        text.add(
            "IFCCARTESIANPOINTLIST3D((("
                + String.join(
                    "),(",
                    first,
                    "0.,-1.,4.",
                    third,
                    "0.,1.,4.",
                    "6.,-1.,3.",
                    "6.,-1.,4.",
                    "6.,1.,3.",
                    "6.,1.,4.")
                + ")))");
    StringBuilder all = new StringBuilder();
    for (String face : faces.split("\\|")) {
      all.append(all.isEmpty() ? "" : ",")
          .append(text.add("IFCINDEXEDPOLYGONALFACE(" + face + ")"));
    }
    return text.add("IFCPOLYGONALFACESET(" + points + ",.T.,(" + all + "),$)");
  }

  @Test
  void anOpeningThatTakesAllLeavesTheElementUnmeasured() {
    opening(wall(), at("-1.,-1.,-1."), text.add("IFCBLOCK(#11,9.,9.,9.)"));
    IfcModel model = text.model();
    assertThat(model.elements()).isEmpty();
    assertThat(model.notMeasured().get(0).why()).contains("its openings leave nothing of it");
  }

  @Test
  void anOpeningThatCannotBeReadLeavesTheElementWholeWithANote() {
    opening(wall(), "$", text.add("IFCSECTIONEDSURFACE($,$,$)"));
    assertVolume(text.only().shape(), 3.6);
    assertThat(text.model().findings())
        .anyMatch(
            f ->
                f.rule().id().equals("opening-not-cut")
                    && f.message().contains("IFCSECTIONEDSURFACE is not read"));
  }
}
