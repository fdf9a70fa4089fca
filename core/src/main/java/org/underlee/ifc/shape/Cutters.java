package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.ifc.shape.PlaneCut.Plane;
import org.underlee.step.StepInstance;

/**
 * Reads what is taken away from a solid: half spaces, plain or bounded by a polygon, straight
 * extrusions and convex solids as convex regions, which planes cut exactly and fast; others as
 * meshes.
 */
final class Cutters {
  /** Larger solids are not searched for convexity: it takes faces times vertices. */
  private static final int MAX_CONVEX_TRIANGLES = 400;

  /** More are taken for a mesh. */
  private static final int MAX_REGIONS = 200;

  private final ShapeReader shapes;
  private final Sweeps sweeps;
  private final Curves curves;

  Cutters(ShapeReader shapes, Sweeps sweeps, Curves curves) {
    this.shapes = shapes;
    this.sweeps = sweeps;
    this.curves = curves;
  }

  static boolean isHalfSpace(StepInstance tool) {
    return tool.keyword().equals("IFCHALFSPACESOLID")
        || tool.keyword().equals("IFCBOXEDHALFSPACE")
        || tool.keyword().equals("IFCPOLYGONALBOUNDEDHALFSPACE");
  }

  Cutter read(StepInstance tool) {
    return switch (tool.keyword()) {
      case "IFCHALFSPACESOLID", "IFCBOXEDHALFSPACE" ->
          new Cutter.Regions(List.of(List.of(halfSpace(tool))));
      case "IFCPOLYGONALBOUNDEDHALFSPACE" -> new Cutter.Regions(bounded(tool));
      default -> {
        if (sweeps.isStraight(tool)) {
          List<List<Plane>> regions = new ArrayList<>();
          sweeps.extrusions(tool).forEach(e -> regions.addAll(extruded(e)));
          yield new Cutter.Regions(regions);
        }
        yield of(MeshBuilder.welded(shapes.read(tool)));
      }
    };
  }

  /**
   * The same, but a tool that is itself a difference comes as convex regions made from planes
   * alone: its faces may lie closer together than those of a mesh can.
   */
  Cutter inPlanes(StepInstance tool) {
    if (Booleans.isDifference(tool)
        && inPlanes(tool.follow(1)) instanceof Cutter.Regions whole
        && inPlanes(tool.follow(2)) instanceof Cutter.Regions taken
        && whole.parts(taken) <= MAX_REGIONS) {
      return whole.less(taken);
    }
    return read(tool);
  }

  private static Cutter of(Mesh mesh) {
    double grid = PlaneCut.grid(mesh);
    if (mesh.triangleCount() > MAX_CONVEX_TRIANGLES) {
      return new Cutter.Solid(mesh);
    }
    Set<Plane> planes = new LinkedHashSet<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vec3 normal = mesh.areaNormal(t);
      if (normal.length() > grid * grid) {
        Plane plane = new Plane(mesh.point(t, 0), normal.unit());
        for (int i = 0; i < mesh.vertexCount(); i++) {
          if (plane.height(mesh.vertex(i)) > grid) {
            return new Cutter.Solid(mesh);
          }
        }
        if (planes.stream().noneMatch(p -> p.normal().distance(plane.normal()) < 1e-9)) {
          planes.add(plane);
        }
      }
    }
    return new Cutter.Regions(List.of(List.copyOf(planes)));
  }

  /** Agreement TRUE: the half space is below the plane, where its normal points away from. */
  private static Plane halfSpace(StepInstance tool) {
    StepInstance surface = tool.follow(0);
    if (!surface.keyword().equals("IFCPLANE")) {
      throw Unreadable.unsupported(surface, " as the bound of a half space");
    }
    Transform frame = Axes.placement(surface.follow(0));
    Plane plane = new Plane(frame.origin(), frame.z());
    return tool.isTrue(1) ? plane : plane.turned();
  }

  private List<List<Plane>> bounded(StepInstance tool) {
    Plane half = halfSpace(tool);
    StepInstance boundary = tool.follow(3);
    Outline outline = Outline.of(Rings.ring(boundary, curves.points(boundary)));
    List<List<Plane>> regions = new ArrayList<>();
    for (List<Vec2> ring : ConvexParts.of(outline)) {
      List<Plane> region = new ArrayList<>(List.of(half));
      region.addAll(walls(ring, Axes.placement(tool.follow(2)), Vec3.Z));
      regions.add(region);
    }
    return regions;
  }

  private static List<List<Plane>> extruded(Extrusion solid) {
    Transform frame = solid.frame();
    Vec3 up = solid.sweep().z() > 0 ? frame.z() : frame.z().negated();
    Plane top = new Plane(frame.apply(solid.sweep()), up);
    Plane bottom = new Plane(frame.origin(), up.negated());
    List<List<Plane>> regions = new ArrayList<>();
    for (List<Vec2> ring : ConvexParts.of(solid.section())) {
      List<Plane> region = new ArrayList<>(List.of(top, bottom));
      region.addAll(walls(ring, frame, solid.sweep()));
      regions.add(region);
    }
    return regions;
  }

  /** Planes along the sides of a counter-clockwise ring swept both ways, normals outward. */
  private static List<Plane> walls(List<Vec2> ring, Transform frame, Vec3 sweep) {
    List<Plane> walls = new ArrayList<>();
    for (int i = 0; i < ring.size(); i++) {
      Vec2 from = ring.get(i);
      Vec2 side = ring.get((i + 1) % ring.size()).minus(from);
      Vec3 out = new Vec3(side.x(), side.y(), 0).cross(sweep);
      Vec3 normal = frame.direction(sweep.z() > 0 ? out : out.negated()).unit();
      walls.add(new Plane(frame.apply(new Vec3(from.x(), from.y(), 0)), normal));
    }
    return walls;
  }
}
