package org.underlee.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.triangulate.polygon.ConstrainedDelaunayTriangulator;
import org.underlee.samples.Project.Placed;
import org.underlee.samples.StepFile.Ref;
import org.underlee.samples.cases.Body;
import org.underlee.samples.cases.FramingCase;
import org.underlee.samples.cases.Piece;

/**
 * Writes a framing case as an IFC file in the way a {@link Mix} asks for. What no sweep can give is
 * written as a tessellation, and in IFC2X3 as a faceted B-rep.
 */
public final class CaseWriter {
  /** An over-long sweep sticks out this far at each end before it is cut. */
  private static final double EXCESS = 250;

  private final StepFile file = new StepFile();
  private final SampleDeck site;
  private final Mix mix;
  private final org.underlee.samples.Geometry geometry;
  private final Project project;

  private CaseWriter(String name, FramingCase.Model model, Mix mix) {
    List<SampleDeck.Level> levels = new ArrayList<>();
    for (int i = 0; i < model.levels(); i++) {
      levels.add(new SampleDeck.Level("Level " + i, 3000 * i));
    }
    this.site = new SampleDeck(name, "A case", levels, List.of(), List.of(), mix);
    this.mix = mix;
    this.geometry = new org.underlee.samples.Geometry(file, mix.unit());
    this.project = new Project(file, geometry, site, mix);
  }

  /** The GlobalId of a piece. */
  public static String globalId(String caseName, String key) {
    return GlobalIds.of(caseName + "/" + key);
  }

  /** A direction of the case in the world. */
  public static Xyz inWorld(Xyz direction, Mix mix) {
    return Frame.turned(Xyz.ORIGIN, mix.yawDegrees()).direction(direction);
  }

  public static byte[] write(String caseName, FramingCase.Model model, Mix mix) {
    return new CaseWriter(caseName, model, mix).bytes(model);
  }

  private byte[] bytes(FramingCase.Model model) {
    Map<Integer, List<Ref>> contained = new TreeMap<>();
    for (Piece piece : model.pieces()) {
      contained.computeIfAbsent(piece.level(), l -> new ArrayList<>()).add(element(piece));
    }
    contained.forEach(
        (level, inside) ->
            file.add(
                "IFCRELCONTAINEDINSPATIALSTRUCTURE",
                site.globalId("in/" + level),
                project.history(),
                StepFile.NONE,
                StepFile.NONE,
                List.copyOf(inside),
                project.storey(level)));
    return file.bytes(site.name() + ".ifc", mix);
  }

  private Ref element(Piece piece) {
    Frame world = site.world(mix);
    Placed storey = project.placement(piece.level());
    Frame own =
        piece.bodies().get(0) instanceof Body.Prism p ? world.then(p.frame()) : storey.world();
    Placed place =
        switch (mix.nesting()) {
          case ELEMENT -> project.placed(storey, own);
          case SHAPE -> project.placed(storey, storey.world());
          case ABSOLUTE -> project.placed(own);
          case DEEP -> {
            Frame between = storey.world().then(Frame.turned(new Xyz(1200, -800, 300), 90));
            yield project.placed(project.placed(storey, between), storey.world());
          }
        };
    Frame inElement = place.world().inverse().then(world);
    List<Bodies.Item> items = piece.bodies().stream().map(b -> item(b.in(inElement))).toList();
    Ref shape = file.add("IFCPRODUCTDEFINITIONSHAPE", none(), none(), List.of(shape(items)));
    return entity(piece, place.placement(), shape);
  }

  private static Object none() {
    return StepFile.NONE;
  }

  private Ref entity(Piece piece, Ref placement, Ref shape) {
    String name = entity(piece.kind());
    List<Object> values =
        new ArrayList<>(
            List.of(
                site.globalId(piece.key()),
                project.history(),
                none(),
                none(),
                none(),
                placement,
                shape,
                none()));
    boolean old = mix.schema().isOld();
    if (name.equals("IFCBUILDINGELEMENTPROXY")) {
      values.add(old ? StepFile.enumeration("ELEMENT") : none());
    } else if (!old || List.of("IFCSLAB", "IFCCOVERING", "IFCRAILING").contains(name)) {
      values.add(none());
    }
    return file.add(name, values.toArray());
  }

  private String entity(Piece.Kind kind) {
    boolean proxies = mix.classing() == Mix.Classing.PROXY;
    boolean members = mix.classing() == Mix.Classing.MEMBER;
    return switch (kind) {
      case WALL -> "IFCWALL";
      case SLAB -> "IFCSLAB";
      case SERVICE ->
          proxies
              ? "IFCBUILDINGELEMENTPROXY"
              : mix.schema().isOld() ? "IFCFLOWSEGMENT" : "IFCPIPESEGMENT";
      case BAR -> proxies ? "IFCBUILDINGELEMENTPROXY" : members ? "IFCMEMBER" : "IFCBEAM";
      case UPRIGHT -> proxies ? "IFCBUILDINGELEMENTPROXY" : members ? "IFCMEMBER" : "IFCCOLUMN";
      case BOARD -> proxies ? "IFCBUILDINGELEMENTPROXY" : members ? "IFCPLATE" : "IFCCOVERING";
      case FITTING -> proxies ? "IFCBUILDINGELEMENTPROXY" : "IFCDISCRETEACCESSORY";
      case RAILING -> proxies ? "IFCBUILDINGELEMENTPROXY" : "IFCRAILING";
    };
  }

  private Ref shape(List<Bodies.Item> items) {
    return file.add(
        "IFCSHAPEREPRESENTATION",
        project.body(),
        "Body",
        items.get(0).kind(),
        items.stream().map(Bodies.Item::item).toList());
  }

  private Bodies.Item item(Body body) {
    if (body instanceof Body.Prism prism) {
      switch (mix.body()) {
        case PROFILE, POLYLINE, SIDE_VIEW -> {
          return new Bodies.Item(swept(prism, 0), "SweptSolid");
        }
        case MAPPED -> {
          return mapped(prism);
        }
        case CLIPPED -> {
          return clipped(prism);
        }
        default -> {
          // written by its surface, below
        }
      }
    }
    return switch (mix.body()) {
      case BREP -> brep(body);
      case POLYGONS -> polygons(body);
      default -> mix.schema().isOld() ? brep(body) : triangles(body);
    };
  }

  private Ref swept(Body.Prism p, double excess) {
    Frame f = p.frame();
    return file.add(
        "IFCEXTRUDEDAREASOLID",
        profile(p),
        geometry.axesAt(f.point(new Xyz(0, 0, -excess)), f.z(), f.x()),
        geometry.direction(Xyz.Z),
        geometry.length(p.length() + 2 * excess));
  }

  private Ref profile(Body.Prism p) {
    StepFile.Raw area = StepFile.enumeration("AREA");
    Ref outer = curve(p.outline());
    return p.holes().isEmpty()
        ? file.add("IFCARBITRARYCLOSEDPROFILEDEF", area, none(), outer)
        : file.add(
            "IFCARBITRARYPROFILEDEFWITHVOIDS",
            area,
            none(),
            outer,
            p.holes().stream().map(this::curve).toList());
  }

  private Ref curve(List<double[]> ring) {
    List<Ref> points = new ArrayList<>();
    ring.forEach(p -> points.add(geometry.point(p[0], p[1])));
    points.add(points.get(0));
    return file.add("IFCPOLYLINE", List.copyOf(points));
  }

  private Bodies.Item mapped(Body.Prism p) {
    Body.Prism atOrigin = new Body.Prism(Frame.WORLD, p.outline(), p.holes(), p.length());
    Ref map =
        file.add(
            "IFCREPRESENTATIONMAP",
            geometry.axes(Frame.WORLD),
            shape(List.of(new Bodies.Item(swept(atOrigin, 0), "SweptSolid"))));
    Ref item = file.add("IFCMAPPEDITEM", map, geometry.operator(p.frame()));
    return new Bodies.Item(item, "MappedRepresentation");
  }

  private Bodies.Item clipped(Body.Prism p) {
    Ref once = cut(swept(p, EXCESS), p.frame(), 0, true);
    return new Bodies.Item(cut(once, p.frame(), p.length(), false), "Clipping");
  }

  private Ref cut(Ref body, Frame f, double at, boolean agreement) {
    Ref plane = file.add("IFCPLANE", geometry.axesAt(f.point(new Xyz(0, 0, at)), f.z(), f.x()));
    Ref space = file.add("IFCHALFSPACESOLID", plane, agreement);
    return file.add("IFCBOOLEANCLIPPINGRESULT", StepFile.enumeration("DIFFERENCE"), body, space);
  }

  private Bodies.Item brep(Body body) {
    List<Ref> points = body.points().stream().map(geometry::point).toList();
    List<Ref> faces = new ArrayList<>();
    for (Body.Face face : body.faces()) {
      List<Ref> bounds = new ArrayList<>();
      bounds.add(file.add("IFCFACEOUTERBOUND", loop(points, face.ring()), true));
      face.holes().forEach(h -> bounds.add(file.add("IFCFACEBOUND", loop(points, h), true)));
      faces.add(file.add("IFCFACE", bounds));
    }
    return new Bodies.Item(
        file.add("IFCFACETEDBREP", file.add("IFCCLOSEDSHELL", List.copyOf(faces))), "Brep");
  }

  private Ref loop(List<Ref> points, List<Integer> ring) {
    return file.add("IFCPOLYLOOP", ring.stream().map(points::get).toList());
  }

  private Bodies.Item polygons(Body body) {
    List<Ref> faces = new ArrayList<>();
    for (Body.Face face : body.faces()) {
      faces.add(
          face.holes().isEmpty()
              ? file.add("IFCINDEXEDPOLYGONALFACE", fromOne(face.ring()))
              : file.add(
                  "IFCINDEXEDPOLYGONALFACEWITHVOIDS",
                  fromOne(face.ring()),
                  face.holes().stream().map(CaseWriter::fromOne).toList()));
    }
    return new Bodies.Item(
        file.add("IFCPOLYGONALFACESET", pointList(body), true, faces, none()), "Tessellation");
  }

  private Bodies.Item triangles(Body body) {
    List<Object> indices = new ArrayList<>();
    for (Body.Face face : body.faces()) {
      triangles(body.points(), face).forEach(t -> indices.add(fromOne(t)));
    }
    return new Bodies.Item(
        file.add(
            "IFCTRIANGULATEDFACESET", pointList(body), none(), true, List.copyOf(indices), none()),
        "Tessellation");
  }

  private Ref pointList(Body body) {
    List<Object> points = body.points().stream().<Object>map(geometry::coordinates).toList();
    return mix.schema() == Mix.Schema.IFC4X3_ADD2
        ? file.add("IFCCARTESIANPOINTLIST3D", points, none())
        : file.add("IFCCARTESIANPOINTLIST3D", points);
  }

  private static List<Object> fromOne(List<Integer> indices) {
    return indices.stream().<Object>map(i -> i + 1).toList();
  }

  /** A face cut into triangles that turn as it turns. */
  private static List<List<Integer>> triangles(List<Xyz> points, Body.Face face) {
    Xyz origin = points.get(face.ring().get(0));
    Xyz normal = normal(points, face.ring());
    Xyz x = points.get(face.ring().get(1)).minus(origin).unit();
    Frame flat = Frame.of(origin, x, normal.cross(x));
    Map<Coordinate, Integer> corners = new TreeMap<>();
    GeometryFactory factory = new GeometryFactory();
    LinearRing shell = ring(points, face.ring(), flat, corners, factory);
    LinearRing[] holes =
        face.holes().stream()
            .map(h -> ring(points, h, flat, corners, factory))
            .toArray(LinearRing[]::new);
    Geometry cut =
        new ConstrainedDelaunayTriangulator(factory.createPolygon(shell, holes)).getResult();
    List<List<Integer>> triangles = new ArrayList<>();
    for (int i = 0; i < cut.getNumGeometries(); i++) {
      Coordinate[] c = cut.getGeometryN(i).getCoordinates();
      boolean left =
          (c[1].x - c[0].x) * (c[2].y - c[0].y) - (c[1].y - c[0].y) * (c[2].x - c[0].x) > 0;
      triangles.add(
          List.of(corners.get(c[0]), corners.get(c[left ? 1 : 2]), corners.get(c[left ? 2 : 1])));
    }
    return triangles;
  }

  private static LinearRing ring(
      List<Xyz> points,
      List<Integer> ring,
      Frame flat,
      Map<Coordinate, Integer> corners,
      GeometryFactory factory) {
    List<Coordinate> coordinates = new ArrayList<>();
    for (int i : ring) {
      Xyz p = flat.inverse().point(points.get(i));
      Coordinate c = new Coordinate(p.x(), p.y());
      corners.put(c, i);
      coordinates.add(c);
    }
    coordinates.add(coordinates.get(0).copy());
    return factory.createLinearRing(coordinates.toArray(Coordinate[]::new));
  }

  private static Xyz normal(List<Xyz> points, List<Integer> ring) {
    Xyz o = points.get(ring.get(0));
    Xyz sum = Xyz.ORIGIN;
    for (int i = 0; i + 1 < ring.size(); i++) {
      sum = sum.plus(points.get(ring.get(i)).minus(o).cross(points.get(ring.get(i + 1)).minus(o)));
    }
    return sum.unit();
  }
}
