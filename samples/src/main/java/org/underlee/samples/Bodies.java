package org.underlee.samples;

import java.util.ArrayList;
import java.util.List;
import org.underlee.samples.StepFile.Ref;

/** The body of a member in each of the ways a mix can ask for. */
final class Bodies {
  /** An over-long body sticks out this far at each end before it is cut. */
  private static final double EXCESS = 250;

  /** A representation item and the name the standard has for its kind. */
  record Item(Ref item, String kind) {}

  private final StepFile file;
  private final Geometry geometry;
  private final Mix mix;

  Bodies(StepFile file, Geometry geometry, Mix mix) {
    this.file = file;
    this.geometry = geometry;
    this.mix = mix;
  }

  /** The item for {@code solid}; a mapped shape is written as its own profile here. */
  Item of(Solid solid) {
    boolean round = solid.section() instanceof Section.Round;
    boolean rectangle = solid.section() instanceof Section.Rectangle;
    return switch (mix.body()) {
      case BREP -> brep(solid);
      case TRIANGLES -> triangles(solid);
      case POLYGONS -> polygons(solid);
      case CLIPPED -> round ? swept(alongAxis(solid, profile(solid.section()))) : clipped(solid);
      case SIDE_VIEW ->
          rectangle ? sideways(solid) : swept(alongAxis(solid, profile(solid.section())));
      case POLYLINE -> straight(solid, round ? profile(solid.section()) : polyline(solid));
      case PROFILE, MAPPED -> straight(solid, profile(solid.section()));
    };
  }

  private Item straight(Solid solid, Ref profile) {
    return solid.isSkewed() ? sideways(solid) : swept(alongAxis(solid, profile));
  }

  private static Item swept(Ref item) {
    return new Item(item, "SweptSolid");
  }

  private Ref alongAxis(Solid solid, Ref profile) {
    Frame f = solid.frame();
    return extruded(profile, f.origin(), f.x(), f.y(), solid.length());
  }

  private Ref extruded(Ref profile, Xyz origin, Xyz axis, Xyz first, double length) {
    return file.add(
        "IFCEXTRUDEDAREASOLID",
        profile,
        geometry.axesAt(origin, axis, first),
        geometry.direction(Xyz.Z),
        geometry.length(length));
  }

  private Ref profile(Section section) {
    Ref position = geometry.flatAxes();
    StepFile.Raw area = StepFile.enumeration("AREA");
    if (section instanceof Section.Rectangle r) {
      return file.share(
          "IFCRECTANGLEPROFILEDEF", area, StepFile.NONE, position, mm(r.width()), mm(r.depth()));
    } else if (section instanceof Section.IShape i) {
      List<Object> values =
          new ArrayList<>(
              List.of(
                  area, "I", position, mm(i.width()), mm(i.depth()), mm(i.web()), mm(i.flange())));
      values.add(StepFile.NONE);
      if (!mix.schema().isOld()) {
        values.add(StepFile.NONE);
        values.add(StepFile.NONE);
      }
      return file.share("IFCISHAPEPROFILEDEF", values.toArray());
    }
    return file.share(
        "IFCCIRCLEPROFILEDEF", area, StepFile.NONE, position, mm(section.width() / 2));
  }

  private Ref polyline(Solid solid) {
    return closed(solid.section().outline());
  }

  private Ref closed(List<double[]> corners) {
    List<Ref> points = new ArrayList<>();
    corners.forEach(p -> points.add(geometry.point(p[0], p[1])));
    points.add(points.get(0));
    Ref curve = file.add("IFCPOLYLINE", List.copyOf(points));
    return file.add(
        "IFCARBITRARYCLOSEDPROFILEDEF", StepFile.enumeration("AREA"), StepFile.NONE, curve);
  }

  /** The side view across the width; a member with skewed ends shows its plan instead. */
  private Item sideways(Solid s) {
    Frame f = s.frame();
    double half = s.section().width() / 2;
    double up = s.section().depth() / 2;
    if (!s.isSkewed()) {
      // seen along y the second axis of the profile points down
      Ref side = closed(List.of(xy(0, -up), xy(s.length(), -up), xy(s.length(), up), xy(0, up)));
      return swept(extruded(side, f.point(new Xyz(0, -half, 0)), f.y(), f.x(), 2 * half));
    }
    double a = s.startSkew() * half;
    double b = s.endSkew() * half;
    Ref plan =
        closed(
            List.of(
                xy(-a, -half), xy(s.length() - b, -half), xy(s.length() + b, half), xy(a, half)));
    return swept(extruded(plan, f.point(new Xyz(0, 0, -up)), f.z(), f.x(), 2 * up));
  }

  private static double[] xy(double x, double y) {
    return new double[] {x, y};
  }

  private Item clipped(Solid s) {
    Frame f = s.frame();
    Ref longer =
        extruded(
            profile(s.section()),
            f.point(new Xyz(-EXCESS, 0, 0)),
            f.x(),
            f.y(),
            s.length() + 2 * EXCESS);
    // one plane faces the member and one faces away, so that both agreement flags occur
    Ref once = cut(longer, s, 0, s.startSkew(), true);
    return new Item(cut(once, s, s.length(), s.endSkew(), false), "Clipping");
  }

  private Ref cut(Ref body, Solid s, double at, double skew, boolean agreement) {
    Frame f = s.frame();
    Xyz normal = f.direction(new Xyz(1, -skew, 0).unit());
    Ref plane = file.add("IFCPLANE", geometry.axesAt(f.point(new Xyz(at, 0, 0)), normal, f.z()));
    Ref space = file.add("IFCHALFSPACESOLID", plane, agreement);
    return file.add("IFCBOOLEANCLIPPINGRESULT", StepFile.enumeration("DIFFERENCE"), body, space);
  }

  private Item brep(Solid solid) {
    List<Ref> points =
        solid.corners().stream().map(c -> geometry.point(solid.frame().point(c))).toList();
    List<Ref> faces = new ArrayList<>();
    for (int[] face : solid.faces()) {
      List<Ref> loop = new ArrayList<>();
      for (int corner : face) {
        loop.add(points.get(corner));
      }
      Ref bound = file.add("IFCFACEOUTERBOUND", file.add("IFCPOLYLOOP", List.copyOf(loop)), true);
      faces.add(file.add("IFCFACE", List.of(bound)));
    }
    Ref shell = file.add("IFCCLOSEDSHELL", List.copyOf(faces));
    return new Item(file.add("IFCFACETEDBREP", shell), "Brep");
  }

  private Item triangles(Solid solid) {
    List<Object> indices = new ArrayList<>();
    for (int[] face : solid.faces()) {
      Triangles.of(solid.corners(), face).forEach(t -> indices.add(fromOne(t)));
    }
    Ref set =
        file.add(
            "IFCTRIANGULATEDFACESET",
            pointList(solid),
            StepFile.NONE,
            true,
            List.copyOf(indices),
            StepFile.NONE);
    return new Item(set, "Tessellation");
  }

  private Item polygons(Solid solid) {
    Ref points = pointList(solid);
    List<Ref> faces =
        solid.faces().stream()
            .map(face -> file.add("IFCINDEXEDPOLYGONALFACE", fromOne(face)))
            .toList();
    Ref set = file.add("IFCPOLYGONALFACESET", points, true, faces, StepFile.NONE);
    return new Item(set, "Tessellation");
  }

  private Ref pointList(Solid solid) {
    List<Object> points =
        solid.corners().stream()
            .<Object>map(c -> geometry.coordinates(solid.frame().point(c)))
            .toList();
    return mix.schema() == Mix.Schema.IFC4X3_ADD2
        ? file.add("IFCCARTESIANPOINTLIST3D", points, StepFile.NONE)
        : file.add("IFCCARTESIANPOINTLIST3D", points);
  }

  private static List<Object> fromOne(int[] indices) {
    List<Object> list = new ArrayList<>();
    for (int i : indices) {
      list.add(i + 1);
    }
    return List.copyOf(list);
  }

  private double mm(double millimetres) {
    return geometry.length(millimetres);
  }
}
