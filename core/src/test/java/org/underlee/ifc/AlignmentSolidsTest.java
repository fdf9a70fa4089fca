package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;
import static org.underlee.ifc.MeshAssert.assertBox;
import static org.underlee.ifc.MeshAssert.assertClosed;

import java.nio.file.Files;
import java.nio.file.Path;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Mesh;
import org.underlee.step.StepFile;

/** Sections along alignments, against closed forms. */
class AlignmentSolidsTest {
  private final IfcText text = IfcText.of("IFC4X3_ADD2", IfcText.METRE);

  private String segment(String origin, String direction, String length, String curve) {
    String placement =
        text.add(
            "IFCAXIS2PLACEMENT2D(" + text.point(origin) + "," + text.direction(direction) + ")");
    return text.add(
        "IFCCURVESEGMENT(.CONTINUOUS.,"
            + placement
            + ",IFCLENGTHMEASURE(0.),IFCLENGTHMEASURE("
            + length
            + "),"
            + curve
            + ")");
  }

  private String line() {
    String vector = text.add("IFCVECTOR(" + text.direction("1.,0.") + ",1.)");
    return text.add("IFCLINE(" + text.point("0.,0.") + "," + vector + ")");
  }

  private String place(String curve, String along, String lateral) {
    String at =
        text.add(
            "IFCPOINTBYDISTANCEEXPRESSION(IFCLENGTHMEASURE("
                + along
                + "),"
                + lateral
                + ",$,$,"
                + curve
                + ")");
    return text.add("IFCAXIS2PLACEMENTLINEAR(" + at + ",$,$)");
  }

  private Mesh solid(String curve, String from, String to, String lateral) {
    return text.shapeOf(sectioned(curve, from, to, lateral));
  }

  private String sectioned(String curve, String from, String to, String lateral) {
    String section = text.rectangle("2.", "1.");
    return text.add(
        "IFCSECTIONEDSOLIDHORIZONTAL("
            + curve
            + ",("
            + section
            + ","
            + section
            + "),("
            + place(curve, from, lateral)
            + ","
            + place(curve, to, lateral)
            + "))");
  }

  private String composite(String... segments) {
    return text.add("IFCCOMPOSITECURVE((" + String.join(",", segments) + "),.F.)");
  }

  @Test
  void aStraightLineMakesABlock() {
    String curve = composite(segment("0.,0.", "1.,0.", "20.", line()));
    Mesh mesh = solid(curve, "5.", "15.", "$");
    assertBox(mesh, 5, -1, -0.5, 15, 1, 0.5);
    assertClosed(mesh);
  }

  /** An offset to the left is an offset towards +y on a line along +x. */
  @Test
  void anOffsetIsToTheLeft() {
    String curve = composite(segment("0.,0.", "1.,0.", "20.", line()));
    assertBox(solid(curve, "5.", "15.", "3."), 5, 2, -0.5, 15, 4, 0.5);
  }

  /** To the right after ten metres: a length below zero runs round the circle clockwise. */
  @Test
  void anArcTurnsAsItsLengthSays() {
    String circle =
        text.add(
            "IFCCIRCLE("
                + text.add("IFCAXIS2PLACEMENT2D(" + text.point("0.,0.") + ",$)")
                + ",50.)");
    String curve =
        composite(
            segment("0.,0.", "1.,0.", "10.", line()),
            segment("10.,0.", "1.,0.", "-78.53981633974483", circle));
    Mesh mesh = solid(curve, "10.", "88.53981633974483", "$");
    assertClosed(mesh);
    // Pappus: 2 m × 1 m, its middle on a quarter of a circle of 50 m.
    assertThat(mesh.volume()).isCloseTo(2 * Math.PI / 2 * 50, Percentage.withPercentage(0.01));
    assertThat(mesh.bounds().min().y()).isCloseTo(-50, within(1e-6));
    assertThat(mesh.bounds().max().x()).isCloseTo(61, within(1e-6));
  }

  /** Fresnel: a clothoid with A² = R·L ends with x = L·(1 − θ²/10 + θ⁴/216 …), θ = L / 2R. */
  @Test
  void aClothoidEndsWhereItsSeriesDoes() {
    String clothoid =
        text.add(
            "IFCCLOTHOID("
                + text.add("IFCAXIS2PLACEMENT2D(" + text.point("0.,0.") + ",$)")
                + ",100.)");
    String curve = composite(segment("0.,0.", "1.,0.", "100.", clothoid));
    Mesh mesh = solid(curve, "0.", "100.", "$");
    double theta = 0.5;
    double x =
        100 * (1 - Math.pow(theta, 2) / 10 + Math.pow(theta, 4) / 216 - Math.pow(theta, 6) / 9360);
    // The right-hand corner of the last section, a metre from the line.
    assertThat(mesh.bounds().max().x()).isCloseTo(x + Math.sin(theta), within(1e-5));
    assertClosed(mesh);
  }

  /** 10 m along x, then 20 m along y. */
  private String squareCorner() {
    return text.add(
        "IFCPOLYLINE(("
            + String.join(
                ",", text.point("0.,0.,0."), text.point("10.,0.,0."), text.point("10.,20.,0."))
            + "))");
  }

  /** Round a square corner to the left: the sections meet in a mitre, section × length is kept. */
  @Test
  void aPolylineIsMitredInItsCorners() {
    Mesh mesh = solid(squareCorner(), "2.", "25.", "$");
    assertClosed(mesh);
    assertThat(mesh.volume()).isCloseTo(2 * 23, within(1e-9));
    assertBox(mesh, 2, -1, -0.5, 11, 15, 0.5);
  }

  /**
   * A metre to the left of the same line, the inside of the corner: 8 m and 15 m, less 1 m each.
   */
  @Test
  void anOffsetFromAPolylineIsShorterInside() {
    Mesh mesh = solid(squareCorner(), "2.", "25.", "1.");
    assertThat(mesh.volume()).isCloseTo(2 * (7 + 14), within(1e-9));
    assertBox(mesh, 2, 0, -0.5, 10, 15, 0.5);
  }

  /** A line that climbs 3 in 4 carries a section square to it: its length is that of the slope. */
  @Test
  void aPolylineMayClimb() {
    String line =
        text.add("IFCPOLYLINE((" + text.point("0.,0.,0.") + "," + text.point("40.,0.,30.") + "))");
    Mesh mesh = solid(line, "0.", "50.", "$");
    assertThat(mesh.volume()).isCloseTo(2 * 50, within(1e-9));
    assertBox(mesh, -0.3, -1, -0.4, 40.3, 1, 30.4);
  }

  /**
   * A vertical curve z = 0.02 x − 0.0005 x², over 40 m in plan: the road ends level with where it
   * began, its top at x = 20 m, 0.2 m up.
   */
  @Test
  void aGradientMayBeAParabola() {
    String plan = composite(segment("0.,0.", "1.,0.", "60.", line()));
    String parabola =
        text.add(
            "IFCPOLYNOMIALCURVE("
                + text.add("IFCAXIS2PLACEMENT2D(" + text.point("0.,0.") + ",$)")
                + ",(0.,1.),(0.,0.02,-0.0005),$)");
    String heights = segment("0.,0.", "1.,0.02", "40.", parabola);
    String gradient = text.add("IFCGRADIENTCURVE((" + heights + "),.F.," + plan + ",$)");
    Mesh mesh = solid(gradient, "0.", "40.", "$");
    assertClosed(mesh);
    assertThat(mesh.bounds().max().z()).isCloseTo(0.2 + 0.5, within(1e-4));
    // The ends are square to slopes of 0.02 and −0.02: half of the height leans out.
    assertThat(mesh.bounds().max().x())
        .isCloseTo(40 + 0.5 * Math.sin(Math.atan(0.02)), within(1e-5));
    // By symmetry, the end's top stands as high as the beginning's.
    assertThat(mesh.bounds().min().z()).isCloseTo(-0.5 * Math.cos(Math.atan(0.02)), within(1e-5));
  }

  @Test
  void aLineWithCantIsRefusedAndSaysSo() {
    String plan = composite(segment("0.,0.", "1.,0.", "60.", line()));
    String cant =
        text.add(
            "IFCSEGMENTEDREFERENCECURVE(("
                + segment("0.,0.", "1.,0.", "60.", line())
                + "),.F.,"
                + plan
                + ",$)");
    assertThat(text.whyNot(sectioned(cant, "0.", "40.", "$")))
        .contains("IFCSEGMENTEDREFERENCECURVE is not read as the line");
  }

  /**
   * By hand: the clothoid ends at 0.15 rad, the section at 600 m stands at 0.25 rad, 50 m on along
   * an arc of 500 m from (549.66285, −7.48796); its lower corner is 5 m to the left, 1 m down, and
   * leans by the slope of 0.00044.
   */
  @Test
  void aPublicAlignmentCarriesItsSolid() {
    Path file =
        Path.of(System.getProperty("underlee.corpus", ""))
            .resolve("edge/gherkin-rules/pjs/pass-pjs003-correct_guids_larger_file.ifc");
    assumeTrue(Files.isRegularFile(file), "skipped: no public models");
    IfcModel model = IfcModel.of(StepFile.read(file));
    BuildingElement road =
        model.elements().stream().filter(e -> e.instance() == 107).findFirst().orElseThrow();
    assertThat(road.shape().volume()).isCloseTo(9 * 300, Percentage.withPercentage(0.01));
    double x = 549.66285138 + 500 * (Math.sin(0.25) - Math.sin(0.15)) + 5 * Math.sin(0.25);
    assertThat(road.shape().bounds().max().x()).isCloseTo(x + 0.00043, within(1e-4));
    assertThat(road.shape().bounds().max().z()).isCloseTo(149.7, within(1e-3));
    assertThat(road.shape().bounds().min().z()).isCloseTo(148.5154, within(1e-3));
  }
}
