package org.underlee.layout;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.underlee.bay.Bay;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.PlanGeometry;
import org.underlee.geom.Transform;
import org.underlee.geom.Triangulation;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * What must stay dry, seen in plan: only bays that lie over some of it are served, each over its
 * whole run, for its water has to go on to the gutter.
 *
 * @param polygons corners in the model's coordinates, metres, without the first one again at the
 *     end; they may overlap
 */
public record DryZone(List<List<Vec2>> polygons) {
  private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");

  /** A zone that reaches less than this below a bay only touches it. */
  private static final double TOUCH = 0.001;

  private static final String ADVICE =
      "Write each polygon's corners in metres as \"0,0 3.6,0 3.6,2.4\", with ; between polygons.";

  public DryZone {
    polygons = polygons.stream().map(List::copyOf).toList();
  }

  /** Whether a text holds corners, else it names an element. */
  public static boolean isDrawn(String text) {
    return text.contains(",")
        && Stream.of(text.trim().split("[\\s,;]+")).allMatch(n -> NUMBER.matcher(n).matches());
  }

  /**
   * Reads {@code 0,0 3.6,0 3.6,2.4; 5,0 6,0 6,1}.
   *
   * @throws InputException when that is no polygon, or one whose edges cross
   */
  public static DryZone parse(String text) {
    return new DryZone(Stream.of(text.split(";")).map(DryZone::polygon).toList());
  }

  /** What bodies cover, seen from above; cut into triangles where that has holes. */
  public static DryZone below(List<Mesh> bodies) {
    List<Geometry> seen =
        bodies.stream().map(b -> PlanGeometry.facesUp(b, Transform.IDENTITY, 0)).toList();
    Geometry all = OverlayNGRobust.union(seen, new GeometryFactory());
    return all == null
        ? new DryZone(List.of())
        : new DryZone(
            IntStream.range(0, all.getNumGeometries())
                .mapToObj(all::getGeometryN)
                .filter(Polygon.class::isInstance)
                .flatMap(piece -> rings((Polygon) piece))
                .toList());
  }

  private static Stream<List<Vec2>> rings(Polygon piece) {
    if (piece.getNumInteriorRing() == 0) {
      return Stream.of(ring(piece.getExteriorRing()));
    }
    List<List<Vec2>> holes =
        IntStream.range(0, piece.getNumInteriorRing())
            .mapToObj(i -> ring(piece.getInteriorRingN(i)))
            .toList();
    Triangulation cut = Triangulation.of(new Outline(ring(piece.getExteriorRing()), holes));
    return cut.triangles().stream().map(t -> Arrays.stream(t).mapToObj(cut.points()::get).toList());
  }

  private static List<Vec2> ring(LinearRing closed) {
    return Arrays.stream(closed.getCoordinates())
        .limit(closed.getNumPoints() - 1L)
        .map(c -> new Vec2(c.x, c.y))
        .toList();
  }

  private static List<Vec2> polygon(String text) {
    List<Vec2> drawn = Stream.of(text.trim().split("\\s+")).map(DryZone::corner).toList();
    boolean closed = drawn.get(0).equals(drawn.get(drawn.size() - 1));
    List<Vec2> ring = closed ? drawn.subList(0, drawn.size() - 1) : drawn;
    if (ring.size() < 3 || !PlanGeometry.polygon(ring).isValid()) {
      throw slip("\"" + text.trim() + "\" encloses no area, or its edges cross");
    }
    return ring;
  }

  private static Vec2 corner(String text) {
    String[] numbers = text.split(",", -1);
    if (numbers.length != 2 || !Arrays.stream(numbers).allMatch(n -> NUMBER.matcher(n).matches())) {
      throw slip("\"" + text + "\" is no corner");
    }
    return new Vec2(Double.parseDouble(numbers[0]), Double.parseDouble(numbers[1]));
  }

  private static InputException slip(String what) {
    return new InputException(Place.NOWHERE, "the dry zone cannot be used: " + what, ADVICE);
  }

  /** As {@link #parse} reads it. */
  public String text() {
    return polygons.stream()
        .map(
            p ->
                p.stream()
                    .map(c -> plain(c.x()) + "," + plain(c.y()))
                    .collect(Collectors.joining(" ")))
        .collect(Collectors.joining("; "));
  }

  private static String plain(double metres) {
    return BigDecimal.valueOf(metres).toPlainString();
  }

  /** With more polygons. */
  DryZone and(List<List<Vec2>> more) {
    return new DryZone(Stream.concat(polygons.stream(), more.stream()).toList());
  }

  /** All of it as one shape in the x and y of a level frame. */
  Geometry in(Transform frame) {
    List<Geometry> drawn =
        polygons.stream()
            .map(p -> p.stream().map(c -> local(c, frame)).toList())
            .map(p -> (Geometry) PlanGeometry.polygon(p))
            .toList();
    GeometryFactory factory = new GeometryFactory();
    Geometry all = OverlayNGRobust.union(drawn, factory);
    return all == null ? factory.createPolygon() : all;
  }

  private static Vec2 local(Vec2 corner, Transform frame) {
    Vec3 p = frame.toLocal(new Vec3(corner.x(), corner.y(), frame.origin().z()));
    return new Vec2(p.x(), p.y());
  }

  /** Whether some of it lies below the bay. */
  boolean isBelow(Bay bay, Transform frame) {
    Geometry within = PlanGeometry.polygon(plan(bay, frame)).buffer(-TOUCH);
    return polygons.stream().anyMatch(p -> within.intersects(PlanGeometry.polygon(p)));
  }

  private static List<Vec2> plan(Bay bay, Transform frame) {
    double from = bay.stretch().from();
    double to = bay.stretch().to();
    return Stream.of(
            new Vec3(bay.leftFace().at(from), from, 0),
            new Vec3(bay.rightFace().at(from), from, 0),
            new Vec3(bay.rightFace().at(to), to, 0),
            new Vec3(bay.leftFace().at(to), to, 0))
        .map(frame::apply)
        .map(p -> new Vec2(p.x(), p.y()))
        .toList();
  }
}
