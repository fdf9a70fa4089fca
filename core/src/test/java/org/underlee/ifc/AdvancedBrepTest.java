package org.underlee.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.ifc.MeshAssert.assertClosed;

import java.util.ArrayList;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.underlee.geom.Mesh;

/**
 * Solids bounded by curved faces, against the closed forms of their volumes: triangles with corners
 * on the surface lose less than a thousandth.
 */
class AdvancedBrepTest {
  private final IfcText text = IfcText.of(IfcText.METRE);

  private static void assertSolid(Mesh mesh, double volume) {
    assertClosed(mesh);
    assertThat(mesh.volume()).isCloseTo(volume, Percentage.withPercentage(0.1));
  }

  private String vertex(String point) {
    return text.add("IFCVERTEXPOINT(" + text.point(point) + ")");
  }

  private String edge(String start, String end, String curve) {
    return text.add("IFCEDGECURVE(" + start + "," + end + "," + curve + ",.T.)");
  }

  private String straight(String start, String end) {
    String vector = text.add("IFCVECTOR(" + text.direction("1.,0.,0.") + ",1.)");
    return edge(start, end, text.add("IFCLINE(" + text.point("0.,0.,0.") + "," + vector + ")"));
  }

  private String circle(String axes, String radius, String vertex) {
    return edge(vertex, vertex, text.add("IFCCIRCLE(" + axes + "," + radius + ")"));
  }

  /** A bound from edges, those with a minus sign run backwards. */
  private String bound(String... edges) {
    List<String> oriented = new ArrayList<>();
    for (String e : edges) {
      String sense = e.startsWith("-") ? ".F." : ".T.";
      oriented.add(
          text.add("IFCORIENTEDEDGE(*,*," + e.substring(e.indexOf('#')) + "," + sense + ")"));
    }
    return text.add(
        "IFCFACEBOUND(" + text.add("IFCEDGELOOP((" + String.join(",", oriented) + "))") + ",.T.)");
  }

  private String face(String surface, String... bounds) {
    return text.add("IFCADVANCEDFACE((" + String.join(",", bounds) + ")," + surface + ",.T.)");
  }

  private String plane() {
    return text.add("IFCPLANE(#11)");
  }

  private Mesh brep(String... faces) {
    String shell = text.add("IFCCLOSEDSHELL((" + String.join(",", faces) + "))");
    return text.shapeOf(text.add("IFCADVANCEDBREP(" + shell + ")"));
  }

  private String at(String height) {
    return text.axes("0.,0.," + height, "", "");
  }

  @Test
  void aCylinderWithASeamHasTheVolumeOfACylinder() {
    String low = vertex("0.5,0.,0.");
    String high = vertex("0.5,0.,2.");
    String bottom = circle(at("0."), "0.5", low);
    String top = circle(at("2."), "0.5", high);
    String seam = straight(low, high);
    String side = text.add("IFCCYLINDRICALSURFACE(#11,0.5)");
    Mesh mesh =
        brep(
            face(side, bound(bottom, seam, "-" + top, "-" + seam)),
            face(plane(), bound("-" + bottom)),
            face(plane(), bound(top)));
    assertSolid(mesh, Math.PI / 4 * 2);
  }

  @Test
  void aCylinderBetweenTwoBoundsIsTheSame() {
    String bottom = circle(at("0."), "0.5", vertex("0.5,0.,0."));
    String top = circle(at("2."), "0.5", vertex("-0.5,0.,2."));
    String side = text.add("IFCCYLINDRICALSURFACE(#11,0.5)");
    Mesh mesh =
        brep(
            face(side, bound(bottom), bound("-" + top)),
            face(plane(), bound("-" + bottom)),
            face(plane(), bound(top)));
    assertSolid(mesh, Math.PI / 4 * 2);
  }

  @Test
  void aSphereBoundedByAVertexIsWhole() {
    String surface = text.add("IFCSPHERICALSURFACE(#11,0.5)");
    String loop = text.add("IFCVERTEXLOOP(" + vertex("0.,0.,0.5") + ")");
    Mesh mesh = brep(face(surface, text.add("IFCFACEOUTERBOUND(" + loop + ",.T.)")));
    assertSolid(mesh, Math.PI / 6);
  }

  /** The cap above z = 0.3 of a sphere with radius 0.5: π·h²·(3r − h)/3 with h = 0.2. */
  @Test
  void aCapOfASphereReachesItsPole() {
    String surface = text.add("IFCSPHERICALSURFACE(#11,0.5)");
    String rim = circle(at("0.3"), "0.4", vertex("0.4,0.,0.3"));
    Mesh mesh = brep(face(surface, bound(rim)), face(plane(), bound("-" + rim)));
    assertSolid(mesh, Math.PI * 0.04 * (1.5 - 0.2) / 3);
  }

  /** Pappus: π·r²·R·angle. */
  @Test
  void aBendIsAQuarterOfATorus() {
    String surface = text.add("IFCTOROIDALSURFACE(#11,1.,0.2)");
    String first =
        circle(text.axes("1.,0.,0.", "0.,1.,0.", "1.,0.,0."), "0.2", vertex("1.2,0.,0."));
    String last = circle(text.axes("0.,1.,0.", "1.,0.,0.", "0.,1.,0."), "0.2", vertex("0.,1.2,0."));
    Mesh mesh =
        brep(
            face(surface, bound(first), bound(last)),
            face(plane(), bound(first)),
            face(plane(), bound(last)));
    assertSolid(mesh, Math.PI * 0.04 * Math.PI / 2);
  }

  @Test
  void aConeIsALineTurnedAboutItsAxis() {
    String line = text.polyline("1.,0.,0.", "0.,0.,3.");
    String profile = text.add("IFCARBITRARYOPENPROFILEDEF(.CURVE.,$," + line + ")");
    String axis =
        text.add(
            "IFCAXIS1PLACEMENT(" + text.point("0.,0.,0.") + "," + text.direction("0.,0.,1.") + ")");
    String surface = text.add("IFCSURFACEOFREVOLUTION(" + profile + ",$," + axis + ")");
    String rim = circle(at("0."), "1.", vertex("1.,0.,0."));
    Mesh mesh = brep(face(surface, bound(rim)), face(plane(), bound("-" + rim)));
    assertSolid(mesh, Math.PI);
  }

  /** A quarter of a cylinder as a rational surface of degree 2 × 1, which holds it exactly. */
  private Mesh quarter(String surface) {
    String a = vertex("1.,0.,0.");
    String b = vertex("0.,1.,0.");
    String c = vertex("0.,1.,2.");
    String d = vertex("1.,0.,2.");
    String low = text.add("IFCCIRCLE(#11,1.)");
    String high = text.add("IFCCIRCLE(" + at("2.") + ",1.)");
    String bottom = edge(a, b, low);
    String top = edge(d, c, high);
    String right = straight(a, d);
    String left = straight(b, c);
    String o = vertex("0.,0.,0.");
    String p = vertex("0.,0.,2.");
    String oa = straight(o, a);
    String bo = straight(b, o);
    String pd = straight(p, d);
    String cp = straight(c, p);
    String op = straight(o, p);
    return brep(
        face(surface, bound(bottom, left, "-" + top, "-" + right)),
        face(plane(), bound(oa, bottom, bo)),
        face(plane(), bound(pd, top, cp)),
        face(plane(), bound(oa, right, "-" + pd, "-" + op)),
        face(plane(), bound("-" + bo, left, cp, "-" + op)));
  }

  @Test
  void aRationalBSplineSurfaceIsAQuarterOfACylinder() {
    String rows = "";
    for (String xy : new String[] {"1.,0.", "1.,1.", "0.,1."}) {
      rows +=
          (rows.isEmpty() ? "" : ",")
              + "("
              + text.point(xy + ",0.")
              + ","
              + text.point(xy + ",2.")
              + ")";
    }
    String w = "0.7071067811865476";
    String surface =
        text.add(
            "IFCRATIONALBSPLINESURFACEWITHKNOTS(2,1,("
                + rows
                + "),.UNSPECIFIED.,.F.,.F.,.F.,(3,3),(2,2),(0.,1.),(0.,1.),.UNSPECIFIED.,((1.,1.),("
                + w
                + ","
                + w
                + "),(1.,1.)))");
    assertSolid(quarter(surface), Math.PI / 2);
  }

  @Test
  void aCircleDrawnAlongALineIsAQuarterOfACylinder() {
    String arc =
        text.add(
            "IFCTRIMMEDCURVE("
                + text.add("IFCCIRCLE(#11,1.)")
                + ",(IFCPARAMETERVALUE(0.)),(IFCPARAMETERVALUE(90.)),.T.,.PARAMETER.)");
    String profile = text.add("IFCARBITRARYOPENPROFILEDEF(.CURVE.,$," + arc + ")");
    String surface =
        text.add(
            "IFCSURFACEOFLINEAREXTRUSION(" + profile + ",$," + text.direction("0.,0.,1.") + ",2.)");
    assertSolid(quarter(surface), Math.PI / 2);
  }

  /** The hole lies across the angle at which the surface's parameters begin anew. */
  @Test
  void aHoleMayLieWhereTheSurfaceMeetsItself() {
    String bottom = circle(at("0."), "1.", vertex("-1.,0.,0."));
    String top = circle(at("2."), "1.", vertex("-1.,0.,2."));
    String a = vertex("-0.8,0.6,1.");
    String b = vertex("-0.8,-0.6,1.");
    String c = vertex("-0.8,-0.6,1.5");
    String d = vertex("-0.8,0.6,1.5");
    String ab = edge(a, b, text.add("IFCCIRCLE(" + at("1.") + ",1.)"));
    String dc = edge(d, c, text.add("IFCCIRCLE(" + at("1.5") + ",1.)"));
    String bc = straight(b, c);
    String ad = straight(a, d);
    String da = straight(d, c);
    String ba = straight(a, b);
    String side = text.add("IFCCYLINDRICALSURFACE(#11,1.)");
    Mesh mesh =
        brep(
            face(side, bound(bottom), bound("-" + top), bound(ad, dc, "-" + bc, "-" + ab)),
            face(plane(), bound("-" + bottom)),
            face(plane(), bound(top)),
            face(plane(), bound(ba, bc, "-" + da, "-" + ad)),
            face(plane(), bound(ab, "-" + ba)),
            face(plane(), bound("-" + dc, da)));
    // The segment of the circle beyond the chord at x = −0.8: r²·(θ − sin θ)/2, cos(θ/2) = 0.8.
    double theta = 2 * Math.acos(0.8);
    assertSolid(mesh, 2 * Math.PI - 0.5 * (theta - Math.sin(theta)) / 2);
  }

  @Test
  void aSurfaceThatIsNotReadIsNamed() {
    String rim = circle(at("0."), "1.", vertex("1.,0.,0."));
    String surface = text.add("IFCOFFSETSURFACE(#11,1.,.F.)");
    String shell = text.add("IFCCLOSEDSHELL((" + face(surface, bound(rim)) + "))");
    assertThat(text.whyNot(text.add("IFCADVANCEDBREP(" + shell + ")")))
        .contains("IFCOFFSETSURFACE is not read as the surface of a face");
  }
}
