package org.underlee.layout;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
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

  /** Corners are kept to a tenth of a millimetre, as all results are. */
  private static final double STEPS = 1e4;

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

  /** What the faces of bodies that look up cover. */
  public static DryZone below(List<Mesh> bodies) {
    List<List<Vec2>> faces = new ArrayList<>();
    for (Mesh body : bodies) {
      for (int t = 0; t < body.triangleCount(); t++) {
        List<Vec2> face = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
          Vec3 p = body.vertex(body.corner(t, k));
          face.add(new Vec2(Math.rint(p.x() * STEPS) / STEPS, Math.rint(p.y() * STEPS) / STEPS));
        }
        if (Outline.signedArea(face) > TOUCH * TOUCH) {
          faces.add(face);
        }
      }
    }
    return new DryZone(faces);
  }

  private static List<Vec2> polygon(String text) {
    List<Vec2> drawn = Stream.of(text.trim().split("\\s+")).map(DryZone::corner).toList();
    boolean closed = drawn.get(0).equals(drawn.get(drawn.size() - 1));
    List<Vec2> ring = closed ? drawn.subList(0, drawn.size() - 1) : drawn;
    if (ring.size() < 3 || Math.abs(Outline.signedArea(ring)) < TOUCH * TOUCH || crosses(ring)) {
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

  /** Whether two edges cross; a polygon may touch itself. */
  private static boolean crosses(List<Vec2> ring) {
    int n = ring.size();
    for (int i = 0; i < n; i++) {
      for (int j = i + 2; j < n; j++) {
        if (meet(ring.get(i), ring.get(i + 1), ring.get(j), ring.get((j + 1) % n))) {
          return true;
        }
      }
    }
    return false;
  }

  private static boolean meet(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
    return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
  }

  private static double side(Vec2 a, Vec2 b, Vec2 p) {
    return Math.signum(b.minus(a).cross(p.minus(a)));
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

  /** Whether some of it lies below the bay. */
  boolean isBelow(Bay bay, Transform frame) {
    List<Vec2> plan = plan(bay, frame);
    return polygons.stream()
        .flatMap(p -> triangles(p).stream())
        .anyMatch(t -> overlap(plan, t, t) && overlap(plan, t, plan));
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

  private static List<List<Vec2>> triangles(List<Vec2> polygon) {
    Triangulation cut = Triangulation.of(Outline.of(polygon));
    return cut.triangles().stream()
        .map(t -> Arrays.stream(t).mapToObj(cut.points()::get).toList())
        .toList();
  }

  /** Whether two convex shapes overlap seen along each edge of a ring. */
  private static boolean overlap(List<Vec2> a, List<Vec2> b, List<Vec2> ring) {
    for (int i = 0; i < ring.size(); i++) {
      Vec2 edge = ring.get((i + 1) % ring.size()).minus(ring.get(i));
      Vec2 across = new Vec2(-edge.y(), edge.x()).times(1 / edge.length());
      double gap = Math.max(least(a, across) - most(b, across), least(b, across) - most(a, across));
      if (gap > -TOUCH) {
        return false;
      }
    }
    return true;
  }

  private static double least(List<Vec2> shape, Vec2 across) {
    return shape.stream().mapToDouble(across::dot).min().orElseThrow();
  }

  private static double most(List<Vec2> shape, Vec2 across) {
    return shape.stream().mapToDouble(across::dot).max().orElseThrow();
  }
}
