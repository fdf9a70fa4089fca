package org.underlee.samples;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Writes a {@link BigBuilding} line by line; lengths in millimetres. */
final class BuildingText {
  /** Facets of a lamp around and from pole to pole. */
  private static final int AROUND = 8;

  private static final int RINGS = 4;

  private final Writer out;
  private final List<Integer> storeys = new ArrayList<>();
  private final List<Integer> maps = new ArrayList<>();
  private int id;
  private int products;
  private int context;
  private int up;
  private int right;
  private int atOrigin;
  private int building;
  private int storeyPlace;
  private double storeyHeight;

  BuildingText(Writer out) {
    this.out = out;
  }

  private int add(String text) {
    try {
      out.write("#" + ++id + "=" + text + ";\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return id;
  }

  private void raw(String text) {
    try {
      out.write(text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String n(double value) {
    return value == Math.rint(value)
        ? (long) value + "."
        : String.format(Locale.ROOT, "%.4f", value);
  }

  private static String list(List<Integer> ids) {
    return ids.stream().map(i -> "#" + i).collect(Collectors.joining(",", "(", ")"));
  }

  /** 22 characters, the first of them 0 to 3. */
  private String globalId() {
    return "'0" + String.format(Locale.ROOT, "%021d", ++products) + "'";
  }

  void begin(int count, double height) {
    storeyHeight = height;
    raw(
        """
        ISO-10303-21;
        HEADER;
        FILE_DESCRIPTION((''),'2;1');
        FILE_NAME('big-building.ifc','2026-03-01T09:00:00',(''),(''),'','','');
        FILE_SCHEMA(('IFC4'));
        ENDSEC;
        DATA;
        """);
    up = add("IFCDIRECTION((0.,0.,1.))");
    right = add("IFCDIRECTION((1.,0.,0.))");
    int origin = add("IFCCARTESIANPOINT((0.,0.,0.))");
    atOrigin = add("IFCAXIS2PLACEMENT3D(#" + origin + ",#" + up + ",#" + right + ")");
    context = add("IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-05,#" + atOrigin + ",$)");
    int length = add("IFCSIUNIT(*,.LENGTHUNIT.,.MILLI.,.METRE.)");
    int units = add("IFCUNITASSIGNMENT((#" + length + "))");
    int project =
        add(
            "IFCPROJECT("
                + globalId()
                + ",$,'Big building',$,$,$,$,(#"
                + context
                + "),#"
                + units
                + ")");
    building = add("IFCBUILDING(" + globalId() + ",$,'Building',$,$,$,$,$,.ELEMENT.,$,$,$)");
    add("IFCRELAGGREGATES(" + globalId() + ",$,$,$,#" + project + ",(#" + building + "))");
    maps.add(map(frame(1200, 80, 1400)));
    maps.add(map(frame(900, 60, 2100)));
    maps.add(map(chair()));
    beginStorey();
  }

  private void beginStorey() {
    int place = axes(0, 0, storeys.size() * storeyHeight);
    storeyPlace = add("IFCLOCALPLACEMENT($,#" + place + ")");
  }

  void endStorey(List<Integer> inside) {
    int storey =
        add(
            "IFCBUILDINGSTOREY("
                + globalId()
                + ",$,'Storey "
                + (storeys.size() + 1)
                + "',$,$,#"
                + storeyPlace
                + ",$,$,.ELEMENT.,"
                + n(storeys.size() * storeyHeight)
                + ")");
    storeys.add(storey);
    add(
        "IFCRELCONTAINEDINSPATIALSTRUCTURE("
            + globalId()
            + ",$,$,$,"
            + list(inside)
            + ",#"
            + storey
            + ")");
    beginStorey();
  }

  void end() {
    add("IFCRELAGGREGATES(" + globalId() + ",$,$,$,#" + building + "," + list(storeys) + ")");
    raw("ENDSEC;\nEND-ISO-10303-21;\n");
  }

  private int point(double x, double y, double z) {
    return add("IFCCARTESIANPOINT((" + n(x) + "," + n(y) + "," + n(z) + "))");
  }

  private int axes(double x, double y, double z) {
    return add("IFCAXIS2PLACEMENT3D(#" + point(x, y, z) + ",$,$)");
  }

  private int flatAxes(double x, double y) {
    int point = add("IFCCARTESIANPOINT((" + n(x) + "," + n(y) + "))");
    return add("IFCAXIS2PLACEMENT2D(#" + point + ",$)");
  }

  private int extruded(int profile, int axes, double depth) {
    return add("IFCEXTRUDEDAREASOLID(#" + profile + ",#" + axes + ",#" + up + "," + n(depth) + ")");
  }

  /** A block with its low corner at the origin. */
  private int block(double x, double y, double z, double dx, double dy, double dz) {
    int profile =
        add(
            "IFCRECTANGLEPROFILEDEF(.AREA.,$,#"
                + flatAxes(dx / 2, dy / 2)
                + ","
                + n(dx)
                + ","
                + n(dy)
                + ")");
    return extruded(profile, axes(x, y, z), dz);
  }

  private int shape(String kind, List<Integer> items) {
    return add(
        "IFCSHAPEREPRESENTATION(#" + context + ",'Body','" + kind + "'," + list(items) + ")");
  }

  /** An element at a place, with a property set of its own. */
  private int product(
      String entity, String name, String type, int representation, double x, double y, double z) {
    int place = add("IFCLOCALPLACEMENT(#" + storeyPlace + ",#" + axes(x, y, z) + ")");
    int shape = add("IFCPRODUCTDEFINITIONSHAPE($,$,(#" + representation + "))");
    String last = entity.equals("IFCDOOR") || entity.equals("IFCWINDOW") ? "2100.,900.," : "";
    String more = last.isEmpty() ? "" : ",$,$";
    int product =
        add(
            entity
                + "("
                + globalId()
                + ",$,'"
                + name
                + "',$,'"
                + name
                + " of the building',#"
                + place
                + ",#"
                + shape
                + ",'"
                + (100_000 + products)
                + "',"
                + last
                + "."
                + type
                + "."
                + more
                + ")");
    List<Integer> properties =
        List.of(
            add("IFCPROPERTYSINGLEVALUE('LoadBearing',$,IFCBOOLEAN(.F.),$)"),
            add("IFCPROPERTYSINGLEVALUE('Phase',$,IFCLABEL('New construction'),$)"));
    int set = add("IFCPROPERTYSET(" + globalId() + ",$,'Pset_Common',$," + list(properties) + ")");
    add("IFCRELDEFINESBYPROPERTIES(" + globalId() + ",$,$,$,(#" + product + "),#" + set + ")");
    return product;
  }

  int box(
      String entity,
      String name,
      String type,
      double x,
      double y,
      double z,
      double dx,
      double dy,
      double dz) {
    int body = shape("SweptSolid", List.of(block(0, 0, 0, dx, dy, dz)));
    return product(entity, name, type, body, x, y, z);
  }

  int pipe(String name, double x, double y, double z, double radius, double length) {
    int profile = add("IFCCIRCLEPROFILEDEF(.AREA.,$,#" + flatAxes(0, 0) + "," + n(radius) + ")");
    int body = shape("SweptSolid", List.of(extruded(profile, axes(0, 0, 0), length)));
    return product("IFCPIPESEGMENT", name, "RIGIDSEGMENT", body, x, y, z);
  }

  /** An I section along x. */
  int steel(String entity, String name, double x, double y, double z, double length) {
    int profile =
        add(
            "IFCISHAPEPROFILEDEF(.AREA.,'IPE 240',#"
                + flatAxes(0, 0)
                + ",120.,240.,6.2,9.8,15.,$,$)");
    int along = add("IFCAXIS2PLACEMENT3D(#" + point(0, 0, 0) + ",#" + right + ",#" + up + ")");
    int body = shape("SweptSolid", List.of(extruded(profile, along, length)));
    return product(entity, name, "BEAM", body, x, y, z);
  }

  int faceted(
      String entity,
      String name,
      String type,
      double x,
      double y,
      double z,
      double dx,
      double dy,
      double dz) {
    int[] corner =
        IntStream.range(0, 8)
            .map(i -> point((i & 1) * dx, (i >> 1 & 1) * dy, (i >> 2) * dz))
            .toArray();
    int[][] loops = {
      {0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}
    };
    List<Integer> faces = new ArrayList<>();
    for (int[] loop : loops) {
      List<Integer> points = IntStream.of(loop).mapToObj(i -> corner[i]).toList();
      int bound = add("IFCFACEOUTERBOUND(#" + add("IFCPOLYLOOP(" + list(points) + ")") + ",.T.)");
      faces.add(add("IFCFACE((#" + bound + "))"));
    }
    int brep = add("IFCFACETEDBREP(#" + add("IFCCLOSEDSHELL(" + list(faces) + ")") + ")");
    return product(entity, name, type, shape("Brep", List.of(brep)), x, y, z);
  }

  /** A ball of triangles. */
  int tessellated(String name, double x, double y, double z, double radius) {
    List<String> points = new ArrayList<>();
    for (int ring = 0; ring <= RINGS; ring++) {
      double polar = Math.PI * (ring + 0.02) / (RINGS + 0.04);
      for (int i = 0; i < AROUND; i++) {
        double turn = 2 * Math.PI * i / AROUND;
        points.add(
            "("
                + n(radius * Math.sin(polar) * Math.cos(turn))
                + ","
                + n(radius * Math.sin(polar) * Math.sin(turn))
                + ","
                + n(radius * Math.cos(polar))
                + ")");
      }
    }
    List<String> triangles = new ArrayList<>();
    for (int ring = 0; ring < RINGS; ring++) {
      for (int i = 0; i < AROUND; i++) {
        int a = ring * AROUND + i + 1;
        int b = ring * AROUND + (i + 1) % AROUND + 1;
        triangles.add("(" + a + "," + (a + AROUND) + "," + b + ")");
        triangles.add("(" + b + "," + (a + AROUND) + "," + (b + AROUND) + ")");
      }
    }
    int list = add("IFCCARTESIANPOINTLIST3D((" + String.join(",", points) + "))");
    int set =
        add("IFCTRIANGULATEDFACESET(#" + list + ",$,.F.,(" + String.join(",", triangles) + "),$)");
    int body = shape("Tessellation", List.of(set));
    return product("IFCLIGHTFIXTURE", name, "POINTSOURCE", body, x, y, z);
  }

  int mapped(String entity, String name, int map, double x, double y, double z) {
    int operator = add("IFCCARTESIANTRANSFORMATIONOPERATOR3D($,$,#" + point(0, 0, 0) + ",$,$)");
    int item = add("IFCMAPPEDITEM(#" + maps.get(map) + ",#" + operator + ")");
    String type = entity.equals("IFCFURNITURE") ? "CHAIR" : entity.substring(3);
    return product(entity, name, type, shape("MappedRepresentation", List.of(item)), x, y, z);
  }

  private int map(List<Integer> items) {
    return add("IFCREPRESENTATIONMAP(#" + atOrigin + ",#" + shape("SweptSolid", items) + ")");
  }

  /** Four bars and a pane. */
  private List<Integer> frame(double width, double thick, double height) {
    return List.of(
        block(0, 0, 0, width, thick, 60),
        block(0, 0, height - 60, width, thick, 60),
        block(0, 0, 60, 60, thick, height - 120),
        block(width - 60, 0, 60, 60, thick, height - 120),
        block(60, thick / 2, 60, width - 120, 6, height - 120));
  }

  private List<Integer> chair() {
    return List.of(
        block(0, 0, 0, 40, 40, 900),
        block(410, 0, 0, 40, 40, 900),
        block(0, 410, 0, 40, 40, 430),
        block(410, 410, 0, 40, 40, 430),
        block(0, 0, 430, 450, 450, 30),
        block(40, 0, 600, 370, 30, 250));
  }
}
