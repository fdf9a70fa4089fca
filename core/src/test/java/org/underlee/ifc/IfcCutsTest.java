package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.ifc.MeshAssert.assertBox;
import static org.underlee.ifc.MeshAssert.assertClosed;
import static org.underlee.ifc.MeshAssert.assertVolume;

import java.util.ArrayList;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Mesh;

/** What is taken away from a body: half spaces and other bodies; volumes worked out by hand. */
class IfcCutsTest {
  private final IfcText text = IfcText.of(IfcText.METRE);

  private String halfSpace(String origin, String normal, String agreement) {
    return text.add(
        "IFCHALFSPACESOLID("
            + text.add("IFCPLANE(" + text.axes(origin, normal, "") + ")")
            + ","
            + agreement
            + ")");
  }

  private String minus(String first, String second) {
    return text.add("IFCBOOLEANCLIPPINGRESULT(.DIFFERENCE.," + first + "," + second + ")");
  }

  @Test
  void aHalfSpaceTakesAwayTheSideThatItsNormalPointsAwayFrom() {
    String block = text.add("IFCBLOCK(#11,4.,2.,1.)");
    Mesh mesh = text.shapeOf(minus(block, halfSpace("1.,0.,0.", "1.,0.,0.", ".T.")));
    assertBox(mesh, 1, 0, 0, 4, 2, 1);
    assertVolume(mesh, 6);
    assertClosed(mesh);
  }

  @Test
  void disagreementTakesAwayTheOtherSideAndCutsMayFollowEachOther() {
    String block = text.add("IFCBLOCK(#11,4.,2.,1.)");
    String once = minus(block, halfSpace("3.,0.,0.", "1.,0.,0.", ".F."));
    // A mitre from (0,0) at 45 degrees: takes the triangle of 2 × 2 / 2 away.
    Mesh mesh = text.shapeOf(minus(once, halfSpace("0.,0.,0.", "1.,-1.,0.", ".T.")));
    assertVolume(mesh, 3 * 2 - 2);
    assertBox(mesh, 0, 0, 0, 3, 2, 1);
    assertClosed(mesh);
  }

  @Test
  void aPlaneAlongAFaceChangesNothing() {
    String block = text.add("IFCBLOCK(#11,4.,2.,1.)");
    assertVolume(text.shapeOf(minus(block, halfSpace("0.,0.,1.", "0.,0.,1.", ".F."))), 8);
  }

  @Test
  void aBoundedHalfSpaceTakesAwayOnlyWhatIsInsideItsBoundary() {
    String block = text.add("IFCBLOCK(#11,4.,2.,1.)");
    String boundary = text.polyline("1.,-1.", "2.,-1.", "2.,5.", "1.,5.", "1.,-1.");
    String plane = text.add("IFCPLANE(" + text.axes("0.,0.,0.5", "0.,0.,1.", "") + ")");
    String tool = text.add("IFCPOLYGONALBOUNDEDHALFSPACE(" + plane + ",.F.,#11," + boundary + ")");
    // A notch 1 wide, 2 long, and 0.5 deep from above.
    Mesh mesh = text.shapeOf(minus(block, tool));
    assertVolume(mesh, 8 - 1);
    assertBox(mesh, 0, 0, 0, 4, 2, 1);
  }

  @Test
  void anExtrusionWithAConcaveSectionIsTakenAwayExactly() {
    String block = text.add("IFCBLOCK(#11,4.,4.,1.)");
    String outline = text.polyline("1.,1.", "3.,1.", "3.,2.", "2.,2.", "2.,3.", "1.,3.", "1.,1.");
    String profile = text.add("IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$," + outline + ")");
    String tool = text.extrusion(profile, "5.");
    Mesh mesh = text.shapeOf(text.add("IFCBOOLEANRESULT(.DIFFERENCE.," + block + "," + tool + ")"));
    assertVolume(mesh, 16 - 3);
  }

  @Test
  void twoRoundHolesTakeTheirAreasFromAPlate() {
    String block = text.add("IFCBLOCK(#11,4.,2.,1.)");
    String once =
        text.add("IFCBOOLEANRESULT(.DIFFERENCE.," + block + "," + hole("1.,1.,-1.") + ")");
    String twice =
        text.add("IFCBOOLEANRESULT(.DIFFERENCE.," + once + "," + hole("3.,1.,-1.") + ")");
    Mesh mesh = text.shapeOf(twice);
    assertVolume(mesh, 8 - Math.PI / 2);
    assertBox(mesh, 0, 0, 0, 4, 2, 1);
  }

  /** As beams of precast concrete come: a wedge is taken away less another that nearly fills it. */
  @Test
  void aToolWhoseFacesLieAMicrometreApartIsMadeFromPlanes() {
    String block = text.add("IFCBLOCK(#11,4.,2.,1.)");
    String wedge = prism("1.,1.,-1.", "0.,0.", "1.,0.", "0.5,0.6", "0.,0.6");
    String less = prism("1.0000002,1.0000001,-1.", "0.,0.", "1.,0.", "0.5,0.3000003", "0.,0.3");
    String tool = text.add("IFCBOOLEANRESULT(.DIFFERENCE.," + wedge + "," + less + ")");
    Mesh mesh = text.shapeOf(text.add("IFCBOOLEANRESULT(.DIFFERENCE.," + block + "," + tool + ")"));
    assertThat(mesh.volume()).isCloseTo(8 - (0.45 - 0.225), Offset.offset(1e-5));
  }

  private String prism(String foot, String... corners) {
    List<String> ring = new ArrayList<>(List.of(corners));
    ring.add(corners[0]);
    String outline = text.polyline(ring.toArray(String[]::new));
    String profile = text.add("IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$," + outline + ")");
    return text.add(
        "IFCEXTRUDEDAREASOLID("
            + profile
            + ","
            + text.axes(foot, "", "")
            + ","
            + text.direction("0.,0.,1.")
            + ",3.)");
  }

  private String hole(String foot) {
    return text.add("IFCRIGHTCIRCULARCYLINDER(" + text.axes(foot, "", "") + ",9.,0.5)");
  }
}
