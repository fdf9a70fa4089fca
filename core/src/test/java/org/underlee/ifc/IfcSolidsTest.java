package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;
import static org.underlee.ifc.MeshAssert.assertBox;
import static org.underlee.ifc.MeshAssert.assertClosed;
import static org.underlee.ifc.MeshAssert.assertVolume;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.geom.Mesh;

/** Swept, turned and combined solids whose volumes are worked out by hand, in metres. */
class IfcSolidsTest {
  private static final double HUNDREDTH_PERCENT = 0.01;

  private final IfcText text = IfcText.of(IfcText.METRE);

  private String axis(String origin, String direction) {
    return text.add(
        "IFCAXIS1PLACEMENT(" + text.point(origin) + "," + text.direction(direction) + ")");
  }

  /** A rectangle 1 × 2 whose middle is at x = 3. */
  private String offCentre() {
    String position = text.add("IFCAXIS2PLACEMENT2D(" + text.point("3.,0.") + ",$)");
    return text.add("IFCRECTANGLEPROFILEDEF(.AREA.,$," + position + ",1.,2.)");
  }

  /** Pappus: section × the way of its centroid, 2·3 times the angle. */
  @ParameterizedTest
  @CsvSource({"90., 9.42477796076938", "360., 37.69911184307752", "-45., 4.71238898038469"})
  void aRevolvedSectionHasTheVolumeOfItsCentroidsWay(String degrees, double volume) {
    Mesh mesh =
        text.shapeOf(
            text.add(
                "IFCREVOLVEDAREASOLID("
                    + offCentre()
                    + ",#11,"
                    + axis("0.,0.,0.", "0.,1.,0.")
                    + ","
                    + degrees
                    + ")"));
    assertVolume(mesh, volume);
    assertClosed(mesh);
  }

  /** Turned about y from the x axis towards −z, as a right-handed turn does. */
  @Test
  void aQuarterTurnEndsWhereARightHandedTurnDoes() {
    Mesh mesh =
        text.shapeOf(
            text.add(
                "IFCREVOLVEDAREASOLID("
                    + offCentre()
                    + ",#11,"
                    + axis("0.,0.,0.", "0.,1.,0.")
                    + ",90.)"));
    assertBox(mesh, 0, -1, -3.5, 3.5, 1, 0);
  }

  /** A frustum: h/3·(A + a + √(A·a)). */
  @Test
  void aTaperedExtrusionIsAFrustum() {
    String solid =
        text.add(
            "IFCEXTRUDEDAREASOLIDTAPERED("
                + text.rectangle("4.", "4.")
                + ",#11,"
                + text.direction("0.,0.,1.")
                + ",3.,"
                + text.rectangle("2.", "2.")
                + ")");
    Mesh mesh = text.shapeOf(solid);
    assertVolume(mesh, 16 + 4 + 8);
    assertClosed(mesh);
  }

  @Test
  void aRoundTaperMatchesPointForPointWhateverItsRadii() {
    String solid =
        text.add(
            "IFCEXTRUDEDAREASOLIDTAPERED("
                + text.add("IFCCIRCLEPROFILEDEF(.AREA.,$,$,9.)")
                + ",#11,"
                + text.direction("0.,0.,1.")
                + ",3.,"
                + text.add("IFCCIRCLEPROFILEDEF(.AREA.,$,$,0.1)")
                + ")");
    assertVolume(text.shapeOf(solid), Math.PI * (81 + 0.01 + 0.9));
  }

  /** Mitred corners keep section × length. */
  @Test
  void aDiskSweptRoundACornerHasTheVolumeOfItsLength() {
    String path = text.polyline("0.,0.,0.", "4.,0.,0.", "4.,3.,0.", "4.,3.,2.");
    Mesh mesh = text.shapeOf(text.add("IFCSWEPTDISKSOLID(" + path + ",0.2,0.1,$,$)"));
    assertVolume(mesh, Math.PI * 0.03 * 9);
    assertClosed(mesh);
  }

  @Test
  void aDiskIsSweptFromItsStartToItsEndParameter() {
    String path = text.polyline("0.,0.,0.", "4.,0.,0.", "4.,4.,0.");
    Mesh mesh = text.shapeOf(text.add("IFCSWEPTDISKSOLID(" + path + ",0.2,$,0.5,1.25)"));
    assertVolume(mesh, Math.PI * 0.04 * 3);
  }

  @Test
  void aDiskSweptAlongACircleIsATorus() {
    String circle = text.add("IFCCIRCLE(#11,2.)");
    Mesh mesh = text.shapeOf(text.add("IFCSWEPTDISKSOLID(" + circle + ",0.5,$,$,$)"));
    assertThat(mesh.volume())
        .isCloseTo(2 * Math.PI * Math.PI * 2 * 0.25, withPercentage(5 * HUNDREDTH_PERCENT));
    assertClosed(mesh);
  }

  /** Its two ends lie in the planes through the centre, not square to the nearest chord. */
  @Test
  void aQuarterBendEndsSquareToItsCircle() {
    String arc =
        text.add(
            "IFCTRIMMEDCURVE("
                + text.add("IFCCIRCLE(#11,2.)")
                + ",(IFCPARAMETERVALUE(0.)),(IFCPARAMETERVALUE(90.)),.T.,.PARAMETER.)");
    Mesh mesh = text.shapeOf(text.add("IFCSWEPTDISKSOLID(" + arc + ",0.5,$,$,$)"));
    assertThat(mesh.bounds().min().x()).isCloseTo(0, within(1e-6));
    assertThat(mesh.bounds().min().y()).isCloseTo(0, within(1e-6));
    assertThat(mesh.bounds().max().x()).isCloseTo(2.5, within(0.001));
  }

  /** The ring ends a little beyond its start, so its last edge crosses the first. */
  @Test
  void anOutlineWhoseEndRunsOverItsStartIsTakenWithoutTheTinyLoop() {
    String ring = text.polyline("0.,0.", "2.,0.", "2.,1.", "0.001,1.", "0.001,-0.001", "0.,0.");
    String profile = text.add("IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$," + ring + ")");
    Mesh mesh = text.shapeOf(text.extrusion(profile, "3."));
    assertThat(mesh.volume()).isCloseTo(3 * 1.999, within(1e-5));
    assertClosed(mesh);
  }

  /** Rounding two right angles by 1 takes 2·(2 − π/2) from the length. */
  @Test
  void aPolygonalDiskSweepRoundsItsCorners() {
    String path = text.polyline("0.,0.,0.", "4.,0.,0.", "4.,4.,0.", "0.,4.,0.");
    Mesh mesh = text.shapeOf(text.add("IFCSWEPTDISKSOLIDPOLYGONAL(" + path + ",0.1,$,$,$,1.)"));
    assertThat(mesh.volume())
        .isCloseTo(Math.PI * 0.01 * (12 - 4 + Math.PI), withPercentage(5 * HUNDREDTH_PERCENT));
  }

  @Test
  void aSectionSweptWithAFixedReferenceKeepsItsXAxisThere() {
    String path = text.polyline("0.,0.,0.", "0.,5.,0.");
    String solid =
        text.add(
            "IFCFIXEDREFERENCESWEPTAREASOLID("
                + text.rectangle("1.", "2.")
                + ",$,"
                + path
                + ",$,$,"
                + text.direction("0.,0.,1.")
                + ")");
    assertBox(text.shapeOf(solid), -1, 0, -0.5, 1, 5, 0.5);
  }

  /** Pyramid and cone base·h/3, sphere 4/3·π·r³. */
  @ParameterizedTest
  @CsvSource({
    "'IFCRECTANGULARPYRAMID(#11,2.,3.,4.)', 8",
    "'IFCRIGHTCIRCULARCONE(#11,3.,2.)', 12.566370614359172",
    "'IFCSPHERE(#11,0.4)', 0.26808257310632899"
  })
  void aPrimitiveHasItsTextbookVolume(String primitive, double volume) {
    Mesh mesh = text.shapeOf(text.add(primitive));
    assertVolume(mesh, volume);
    assertClosed(mesh);
  }

  private String block(String origin, String sizes) {
    return text.add("IFCBLOCK(" + text.axes(origin, "", "") + "," + sizes + ")");
  }

  @ParameterizedTest
  @CsvSource({"UNION, 15", "INTERSECTION, 1", "DIFFERENCE, 7"})
  void twoBlocksThatShareACornerCombine(String operation, double volume) {
    String a = block("0.,0.,0.", "2.,2.,2.");
    String b = block("1.,1.,1.", "2.,2.,2.");
    assertVolume(
        text.shapeOf(text.add("IFCBOOLEANRESULT(." + operation + ".," + a + "," + b + ")")),
        volume);
  }

  /** Two L of area 5, two high, one of them one higher: neither is convex, so trees do it. */
  @ParameterizedTest
  @CsvSource({"UNION, 15", "INTERSECTION, 5", "DIFFERENCE, 5"})
  void solidsWithHollowCornersCombine(String operation, double volume) {
    String a = text.extrusion(ell(), "2.");
    String b =
        text.add(
            "IFCEXTRUDEDAREASOLIDTAPERED("
                + ell()
                + ","
                + text.axes("0.,0.,1.", "", "")
                + ","
                + text.direction("0.,0.,1.")
                + ",2.,"
                + ell()
                + ")");
    assertVolume(
        text.shapeOf(text.add("IFCBOOLEANRESULT(." + operation + ".," + a + "," + b + ")")),
        volume);
  }

  private String ell() {
    String ring = text.polyline("0.,0.", "3.,0.", "3.,1.", "1.,1.", "1.,3.", "0.,3.", "0.,0.");
    return text.add("IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$," + ring + ")");
  }

  @Test
  void aUnionWithAHalfSpaceHasNoEnd() {
    String half = text.add("IFCHALFSPACESOLID(" + text.add("IFCPLANE(#11)") + ",.T.)");
    String a = block("0.,0.,0.", "2.,2.,2.");
    assertThat(text.whyNot(text.add("IFCBOOLEANRESULT(.UNION.," + a + "," + half + ")")))
        .contains("has no end");
  }

  @Test
  void aSolidKeepsWhatLiesInAHalfSpace() {
    String plane = text.add("IFCPLANE(" + text.axes("0.,0.,0.5", "", "") + ")");
    String half = text.add("IFCHALFSPACESOLID(" + plane + ",.T.)");
    String a = block("0.,0.,0.", "2.,2.,2.");
    assertVolume(
        text.shapeOf(text.add("IFCBOOLEANRESULT(.INTERSECTION.," + half + "," + a + ")")), 2);
  }

  /** IPE 200 has 28.48 cm² by EN 10365, fillets of 12 mm in it. */
  @Test
  void aRolledSectionHasTheAreaOfTheTables() {
    String profile = text.add("IFCISHAPEPROFILEDEF(.AREA.,$,$,0.1,0.2,0.0056,0.0085,0.012,$,$)");
    assertThat(text.shapeOf(text.extrusion(profile, "1.")).volume())
        .isCloseTo(28.48e-4, withPercentage(0.1));
  }

  /** L 100 × 100 × 10 has 19.15 cm² by EN 10056-1, root 12 mm and toes 6 mm in it. */
  @Test
  void anAngleHasTheAreaOfTheTables() {
    String profile = text.add("IFCLSHAPEPROFILEDEF(.AREA.,$,$,0.1,0.1,0.01,0.012,0.006,$)");
    assertThat(text.shapeOf(text.extrusion(profile, "1.")).volume())
        .isCloseTo(19.15e-4, withPercentage(0.1));
  }

  @Test
  void aCompositeProfileIsAllItsParts() {
    String parts =
        text.add(
            "IFCCOMPOSITEPROFILEDEF(.AREA.,$,("
                + text.rectangle("1.", "1.")
                + ","
                + offCentre()
                + "),$)");
    assertVolume(text.shapeOf(text.extrusion(parts, "2.")), 6);
  }

  @Test
  void aStripFollowsItsCentreLine() {
    String strip =
        text.add(
            "IFCCENTERLINEPROFILEDEF(.AREA.,$,"
                + text.polyline("0.,0.", "4.,0.", "4.,3.")
                + ",0.2)");
    assertVolume(text.shapeOf(text.extrusion(strip, "1.")), 0.2 * 7);
  }

  /** Three cubic Bézier points of a parabola: under it 2/3 of base × height. */
  @Test
  void aSplineBoundsItsArea() {
    String spline =
        text.add(
            "IFCBSPLINECURVEWITHKNOTS(2,("
                + text.point("0.,0.")
                + ","
                + text.point("1.,2.")
                + ","
                + text.point("2.,0.")
                + "),.UNSPECIFIED.,.F.,.F.,(3,3),(0.,1.),.UNSPECIFIED.)");
    String ring =
        text.add(
            "IFCCOMPOSITECURVE(("
                + text.add("IFCCOMPOSITECURVESEGMENT(.CONTINUOUS.,.T.," + spline + ")")
                + ","
                + text.add(
                    "IFCCOMPOSITECURVESEGMENT(.CONTINUOUS.,.T.,"
                        + text.polyline("2.,0.", "0.,0.")
                        + ")")
                + "),.F.)");
    String profile = text.add("IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$," + ring + ")");
    assertThat(text.shapeOf(text.extrusion(profile, "1.")).volume())
        .isCloseTo(4.0 / 3, withPercentage(1));
  }

  @Test
  void aCurveMadeOfItselfIsRefused() {
    String ring = "IFCCOMPOSITECURVE((#101),.F.)";
    assertThat(text.add(ring)).isEqualTo("#100");
    text.add("IFCCOMPOSITECURVESEGMENT(.CONTINUOUS.,.T.,#100)");
    String profile = text.add("IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$,#100)");
    assertThat(text.whyNot(text.extrusion(profile, "1."))).contains("curves inside curves");
  }

  @Test
  void onlyABoundingBoxIsTakenForTheBodyWithAWarning() {
    String box = text.add("IFCBOUNDINGBOX(" + text.point("1.,0.,0.") + ",2.,3.,4.)");
    String shape =
        text.shape(text.add("IFCSHAPEREPRESENTATION(#9,'Box','BoundingBox',(" + box + "))"));
    text.add("IFCBEAM('0B00000000000000000009',$,'Beam',$,$,$," + shape + ",$,$)");
    assertBox(text.only().shape(), 1, 0, 0, 3, 3, 4);
    assertThat(text.model().findings())
        .anyMatch(f -> f.rule().id().equals("bounding-box-only") && f.message().contains("box"));
  }
}
