package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.ifc.MeshAssert.assertBox;
import static org.underlee.ifc.MeshAssert.assertClosed;
import static org.underlee.ifc.MeshAssert.assertVolume;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.geom.Mesh;

/** Volumes and boxes worked out by hand, in metres unless a test says otherwise. */
class IfcShapesTest {
  private final IfcText text = IfcText.of(IfcText.METRE);

  /** By hand: circle and ellipse π·a·b; rounded corners take (4 − π)·r²; the rest is rectangles. */
  @ParameterizedTest
  @CsvSource({
    "'IFCRECTANGLEPROFILEDEF(.AREA.,$,$,4.,6.)', 24",
    "'IFCROUNDEDRECTANGLEPROFILEDEF(.AREA.,$,$,4.,6.,1.)', 23.141592653589793",
    "'IFCRECTANGLEHOLLOWPROFILEDEF(.AREA.,$,$,4.,6.,1.,$,$)', 16",
    "'IFCRECTANGLEHOLLOWPROFILEDEF(.AREA.,$,$,4.,6.,1.,0.,1.)', 15.141592653589793",
    "'IFCCIRCLEPROFILEDEF(.AREA.,$,$,2.)', 12.566370614359172",
    "'IFCCIRCLEHOLLOWPROFILEDEF(.AREA.,$,$,2.,1.)', 9.42477796076938",
    "'IFCELLIPSEPROFILEDEF(.AREA.,$,$,3.,2.)', 18.84955592153876",
    "'IFCISHAPEPROFILEDEF(.AREA.,$,$,10.,10.,0.5,1.,$,$,$)', 24",
    "'IFCASYMMETRICISHAPEPROFILEDEF(.AREA.,$,$,10.,10.,0.5,1.,$,6.,2.,$,$,$,$,$)', 25.5",
    "'IFCLSHAPEPROFILEDEF(.AREA.,$,$,10.,8.,1.,$,$,$)', 17",
    "'IFCLSHAPEPROFILEDEF(.AREA.,$,$,10.,$,1.,$,$,$)', 19",
    "'IFCTSHAPEPROFILEDEF(.AREA.,$,$,10.,8.,1.,2.,$,$,$,$,$)', 24",
    "'IFCUSHAPEPROFILEDEF(.AREA.,$,$,10.,5.,1.,2.,$,$,$)', 26",
    "'IFCCSHAPEPROFILEDEF(.AREA.,$,$,10.,5.,1.,2.,$)', 20",
    "'IFCZSHAPEPROFILEDEF(.AREA.,$,$,10.,5.,1.,2.,$,$)', 26"
  })
  void aParameterizedProfileHasItsAreaAndClosesWhenExtruded(String profile, double area) {
    Mesh mesh = text.shapeOf(text.extrusion(text.add(profile), "0.5"));
    assertVolume(mesh, area / 2);
    assertClosed(mesh);
  }

  @Test
  void aProfileIsMovedAndTurnedByItsPosition() {
    String position =
        text.add(
            "IFCAXIS2PLACEMENT2D(" + text.point("10.,0.") + "," + text.direction("0.,1.") + ")");
    String profile = text.add("IFCRECTANGLEPROFILEDEF(.AREA.,$," + position + ",4.,2.)");
    assertBox(text.shapeOf(text.extrusion(profile, "1.")), 9, -2, 0, 11, 2, 1);
  }

  @Test
  void anOutlineWithAHoleIsExtrudedAlongASlantDownwards() {
    String outer = text.polyline("0.,0.", "4.,0.", "4.,4.", "0.,4.", "0.,0.");
    String hole = text.polyline("1.,1.", "2.,1.", "2.,3.", "1.,3.", "1.,1.");
    String profile =
        text.add("IFCARBITRARYPROFILEDEFWITHVOIDS(.AREA.,$," + outer + ",(" + hole + "))");
    // Depth 5 along (0,3,−4)/5: 4 down, 3 along y.
    String solid =
        text.add(
            "IFCEXTRUDEDAREASOLID(" + profile + ",#11," + text.direction("0.,3.,-4.") + ",5.)");
    Mesh mesh = text.shapeOf(solid);
    assertVolume(mesh, (16 - 2) * 4);
    assertBox(mesh, 0, 0, -4, 4, 7, 0);
    assertClosed(mesh);
  }

  @Test
  void anIndexedCurveOfLinesAndArcsKeepsItsArea() {
    String points =
        text.add("IFCCARTESIANPOINTLIST2D(((-1.,0.),(1.,0.),(1.,2.),(0.,3.),(-1.,2.)))");
    String curve =
        text.add(
            "IFCINDEXEDPOLYCURVE("
                + points
                + ",(IFCLINEINDEX((1,2,3)),IFCARCINDEX((3,4,5)),IFCLINEINDEX((5,1))),$)");
    String profile = text.add("IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$," + curve + ")");
    assertVolume(text.shapeOf(text.extrusion(profile, "1.")), 4 + Math.PI / 2);
  }

  @Test
  void aCompositeCurveOfALineAndATrimmedCircleKeepsItsArea() {
    String circle = text.add("IFCCIRCLE(" + text.add("IFCAXIS2PLACEMENT2D(#10,$)") + ",2.)");
    String arc =
        text.add(
            "IFCTRIMMEDCURVE("
                + circle
                + ",(IFCPARAMETERVALUE(0.)),(IFCPARAMETERVALUE(90.)),.T.,.PARAMETER.)");
    String back = text.polyline("2.,0.", "0.,0.", "0.,2.");
    String curve =
        text.add(
            "IFCCOMPOSITECURVE(("
                + text.add("IFCCOMPOSITECURVESEGMENT(.CONTINUOUS.,.T.," + arc + ")")
                + ","
                + text.add("IFCCOMPOSITECURVESEGMENT(.CONTINUOUS.,.F.," + back + ")")
                + "),.F.)");
    String profile = text.add("IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$," + curve + ")");
    assertVolume(text.shapeOf(text.extrusion(profile, "1.")), Math.PI);
  }

  @Test
  void aMirroredProfileIsMirrored() {
    String parent = text.add("IFCLSHAPEPROFILEDEF(.AREA.,$,$,4.,2.,1.,$,$,$)");
    String profile = text.add("IFCMIRROREDPROFILEDEF(.AREA.,$," + parent + ",*,$)");
    Mesh mesh = text.shapeOf(text.extrusion(profile, "1."));
    assertVolume(mesh, 5);
    // The upright leg, 1 wide and 3 high above the foot, is now on the right: its first moment.
    assertThat(firstMomentX(mesh)).isCloseTo(0.5 * 3, org.assertj.core.data.Offset.offset(1e-9));
  }

  /** ∫ x dV: each face with the origin makes a tetrahedron with its centroid at a quarter sum. */
  private static double firstMomentX(Mesh m) {
    double sum = 0;
    for (int t = 0; t < m.triangleCount(); t++) {
      double volume = m.point(t, 0).dot(m.point(t, 1).cross(m.point(t, 2))) / 6;
      sum += volume * (m.point(t, 0).x() + m.point(t, 1).x() + m.point(t, 2).x()) / 4;
    }
    return sum;
  }

  @Test
  void aMappedItemIsMovedScaledAndMirroredAndStillFacesOutward() {
    String source = text.body(text.add("IFCBLOCK(#11,1.,2.,3.)"));
    String map = text.add("IFCREPRESENTATIONMAP(#11," + source + ")");
    String operator =
        text.add(
            "IFCCARTESIANTRANSFORMATIONOPERATOR3DNONUNIFORM("
                + text.direction("1.,0.,0.")
                + ","
                + text.direction("0.,-1.,0.")
                + ","
                + text.point("10.,0.,0.")
                + ",2.,"
                + text.direction("0.,0.,1.")
                + ",3.,4.)");
    Mesh mesh = text.shapeOf(text.add("IFCMAPPEDITEM(" + map + "," + operator + ")"));
    assertBox(mesh, 10, -6, 0, 12, 0, 12);
    assertVolume(mesh, 2 * 6 * 12);
  }

  @Test
  void aMapThatContainsItselfIsNamed() {
    String operator =
        text.add("IFCCARTESIANTRANSFORMATIONOPERATOR3D($,$," + text.point("0.,0.,0.") + ",$,$)");
    text.add("IFCREPRESENTATIONMAP(#11,#103)");
    text.add("IFCSHAPEREPRESENTATION(#9,'Body','MappedRepresentation',(#104))");
    String item = text.add("IFCMAPPEDITEM(#102," + operator + ")");
    assertThat(item).isEqualTo("#104");
    assertThat(text.whyNot(item)).contains("the shape contains itself: #104");
  }

  private static final String[] CUBE = {
    "0.,0.,0.", "1.,0.,0.", "1.,1.,0.", "0.,1.,0.", "0.,0.,1.", "1.,0.,1.", "1.,1.,1.", "0.,1.,1."
  };
  private static final int[][] FACES = {
    {0, 3, 2, 1}, {4, 5, 6, 7}, {0, 1, 5, 4}, {1, 2, 6, 5}, {2, 3, 7, 6}, {3, 0, 4, 7}
  };

  /** The unit cube as a faceted B-rep; the given faces are written inside out. */
  private String cube(List<Integer> insideOut) {
    List<String> points = new ArrayList<>();
    for (String c : CUBE) {
      points.add(text.point(c));
    }
    List<String> faces = new ArrayList<>();
    for (int f = 0; f < FACES.length; f++) {
      List<String> loop = new ArrayList<>();
      for (int v : FACES[f]) {
        loop.add(points.get(v));
      }
      String ring = text.add("IFCPOLYLOOP((" + String.join(",", loop) + "))");
      String sense = insideOut.contains(f) ? ".F." : ".T.";
      faces.add(
          text.add("IFCFACE((" + text.add("IFCFACEOUTERBOUND(" + ring + "," + sense + ")") + "))"));
    }
    return "(" + String.join(",", faces) + ")";
  }

  @Test
  void aFacetedBrepFacesOutwardHoweverItsFacesWereWritten() {
    for (List<Integer> wrong :
        List.of(List.<Integer>of(), List.of(0, 1, 2, 3, 4, 5), List.of(2), List.of(0, 3, 4))) {
      IfcShapesTest fresh = new IfcShapesTest();
      String shell = fresh.text.add("IFCCLOSEDSHELL(" + fresh.cube(wrong) + ")");
      Mesh mesh = fresh.text.shapeOf(fresh.text.add("IFCFACETEDBREP(" + shell + ")"));
      assertVolume(mesh, 1);
      assertClosed(mesh);
    }
  }

  @Test
  void aSurfaceModelThatClosesFacesOutwardToo() {
    String shell = text.add("IFCOPENSHELL(" + cube(List.of(0, 1, 2, 3, 4, 5)) + ")");
    Mesh mesh = text.shapeOf(text.add("IFCSHELLBASEDSURFACEMODEL((" + shell + "))"));
    assertVolume(mesh, 1);
  }

  @Test
  void aFaceWithAHoleIsCutOutOfItsPlane() {
    String outer =
        text.add("IFCPOLYLOOP((" + corners("0.,0.,2.", "4.,0.,2.", "4.,4.,2.", "0.,4.,2.") + "))");
    String hole =
        text.add("IFCPOLYLOOP((" + corners("1.,1.,2.", "2.,1.,2.", "2.,2.,2.", "1.,2.,2.") + "))");
    String face =
        text.add(
            "IFCFACE(("
                + text.add("IFCFACEBOUND(" + hole + ",.T.)")
                + ","
                + text.add("IFCFACEOUTERBOUND(" + outer + ",.T.)")
                + "))");
    String set = text.add("IFCCONNECTEDFACESET((" + face + "))");
    Mesh mesh = text.shapeOf(text.add("IFCFACEBASEDSURFACEMODEL((" + set + "))"));
    double area = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      area += mesh.areaNormal(t).z() / 2;
    }
    assertThat(area).isCloseTo(15, org.assertj.core.data.Offset.offset(1e-9));
  }

  private String corners(String... points) {
    List<String> refs = new ArrayList<>();
    for (String p : points) {
      refs.add(text.point(p));
    }
    return String.join(",", refs);
  }

  @Test
  void tessellationsAreReadWithTheirPointNumbersFromOne() {
    String points =
        text.add("IFCCARTESIANPOINTLIST3D(((0.,0.,0.),(3.,0.,0.),(0.,3.,0.),(0.,0.,3.)))");
    String set =
        text.add(
            "IFCTRIANGULATEDFACESET(" + points + ",$,.T.,((1,2,3),(1,2,4),(2,3,4),(3,1,4)),$)");
    Mesh mesh = text.shapeOf(set);
    assertVolume(mesh, 4.5);
    assertClosed(mesh);
    IfcText other = IfcText.of(IfcText.METRE);
    String fewer = other.add("IFCCARTESIANPOINTLIST3D(((0.,0.,0.),(3.,0.,0.),(0.,3.,0.)))");
    assertThat(other.whyNot(other.add("IFCTRIANGULATEDFACESET(" + fewer + ",$,.T.,((1,2,4)),$)")))
        .contains("point number the number 4 is not one of 1 to 3");
  }

  @Test
  void aPolygonalFaceSetMayHaveHolesInItsFaces() {
    // A box 4×4×1 with a square shaft of 2×2 through it: 16 − 4 = 12.
    String points =
        text.add(
            "IFCCARTESIANPOINTLIST3D(((0.,0.,0.),(4.,0.,0.),(4.,4.,0.),(0.,4.,0.),(0.,0.,1.),"
                + "(4.,0.,1.),(4.,4.,1.),(0.,4.,1.),(1.,1.,0.),(3.,1.,0.),(3.,3.,0.),(1.,3.,0.),"
                + "(1.,1.,1.),(3.,1.,1.),(3.,3.,1.),(1.,3.,1.)))");
    List<String> faces = new ArrayList<>();
    faces.add(text.add("IFCINDEXEDPOLYGONALFACEWITHVOIDS((4,3,2,1),((9,10,11,12)))"));
    faces.add(text.add("IFCINDEXEDPOLYGONALFACEWITHVOIDS((5,6,7,8),((16,15,14,13)))"));
    for (String side :
        List.of(
            "1,2,6,5",
            "2,3,7,6",
            "3,4,8,7",
            "4,1,5,8",
            "10,9,13,14",
            "11,10,14,15",
            "12,11,15,16",
            "9,12,16,13")) {
      faces.add(text.add("IFCINDEXEDPOLYGONALFACE((" + side + "))"));
    }
    Mesh mesh =
        text.shapeOf(
            text.add(
                "IFCPOLYGONALFACESET(" + points + ",.T.,(" + String.join(",", faces) + "),$)"));
    assertVolume(mesh, 12);
    assertClosed(mesh);
  }

  @ParameterizedTest
  @CsvSource({
    "'IFCEXTRUDEDAREASOLID(#101,$,#100,0.)', 'its depth is 0.0'",
    "'IFCEXTRUDEDAREASOLID(#101,$,#100,-2.)', 'its depth is -2.0'",
    "'IFCEXTRUDEDAREASOLID(#102,$,#100,1.)', 'attribute 5 is -1.0, not a positive length'",
    "'IFCEXTRUDEDAREASOLID(#103,$,#100,1.)', 'a wall of 2.0 leaves no hollow'",
    "'IFCEXTRUDEDAREASOLID(#104,$,#100,1.)', 'attribute 3 should be a reference'",
    "'IFCSPHERE(#11,-1.)', 'attribute 2 is -1.0, not a positive length'",
    "'IFCBOOLEANRESULT(.XOR.,#101,#101)', 'is not read for XOR'",
    "'IFCBOOLEANRESULT(.UNION.,#101,#101)', 'IFCRECTANGLEPROFILEDEF is not read as a body'",
    "'IFCSECTIONEDSURFACE($,$,$)', 'IFCSECTIONEDSURFACE is not read as a body'",
    "'IFCFACETEDBREP(#9999)', 'refers to #9999, which the file does not have'",
  })
  void whatCannotBeReadIsSaidWithItsNumber(String item, String why) {
    text.direction("0.,0.,1.");
    text.rectangle("1.", "1.");
    text.rectangle("1.", "-1.");
    text.add("IFCCIRCLEHOLLOWPROFILEDEF(.AREA.,$,$,1.,2.)");
    text.add("IFCCENTERLINEPROFILEDEF(.AREA.,$,$,1.)");
    assertThat(text.whyNot(text.add(item))).contains(why).contains(", #");
  }

  @Test
  void anOutlineThatCrossesItselfIsNotMeasured() {
    String bow = text.polyline("0.,0.", "4.,4.", "4.,0.", "0.,3.", "0.,0.");
    String profile = text.add("IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$," + bow + ")");
    assertThat(text.whyNot(text.extrusion(profile, "1."))).contains("IFCEXTRUDEDAREASOLID");
  }
}
