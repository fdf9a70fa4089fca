package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Triangulation;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * The solid between sections that follow each other, each with the same number of points: faces
 * from every section to the next, and a cap at both ends unless it closes on itself.
 */
final class Loft {
  private Loft() {}

  /** All ring points of an outline, the outer ring first, as a station of a loft has them. */
  static List<Vec2> points(Outline outline) {
    List<Vec2> points = new ArrayList<>(outline.outer());
    outline.holes().forEach(points::addAll);
    return points;
  }

  /** Points of the section between two, {@code share} of the way from the first to the last. */
  static List<Vec2> between(List<Vec2> first, List<Vec2> last, double share) {
    List<Vec2> points = new ArrayList<>();
    for (int i = 0; i < first.size(); i++) {
      points.add(first.get(i).times(1 - share).plus(last.get(i).times(share)));
    }
    return points;
  }

  /** The outline between two that are alike. */
  static Outline between(Outline first, Outline last, double share) {
    List<List<Vec2>> holes = new ArrayList<>();
    for (int i = 0; i < first.holes().size(); i++) {
      holes.add(between(first.holes().get(i), last.holes().get(i), share));
    }
    return new Outline(between(first.outer(), last.outer(), share), holes);
  }

  static void requireAlike(StepInstance solid, Outline first, Outline last) {
    boolean alike =
        first.outer().size() == last.outer().size() && first.holes().size() == last.holes().size();
    for (int i = 0; alike && i < first.holes().size(); i++) {
      alike = first.holes().get(i).size() == last.holes().get(i).size();
    }
    if (!alike) {
      throw Unreadable.unsupported(solid, " with sections of different kinds");
    }
  }

  /**
   * The mesh, facing outward.
   *
   * @param closed whether the last station joins the first
   */
  static Mesh mesh(Outline first, Outline last, List<List<Vec3>> stations, boolean closed) {
    MeshBuilder builder = new MeshBuilder();
    List<int[]> vertices =
        stations.stream().map(s -> s.stream().mapToInt(builder::vertex).toArray()).toList();
    int spans = closed ? vertices.size() : vertices.size() - 1;
    for (int s = 0; s < spans; s++) {
      int start = 0;
      int[] from = vertices.get(s);
      int[] to = vertices.get((s + 1) % vertices.size());
      start = side(builder, from, to, start, first.outer().size());
      for (List<Vec2> hole : first.holes()) {
        start = side(builder, from, to, start, hole.size());
      }
    }
    if (!closed) {
      cap(builder, first, vertices.get(0), true);
      cap(builder, last, vertices.get(vertices.size() - 1), false);
    }
    Mesh mesh = builder.mesh();
    return mesh.volume() < 0 ? MeshBuilder.turned(mesh) : mesh;
  }

  private static int side(MeshBuilder builder, int[] from, int[] to, int start, int size) {
    for (int i = 0; i < size; i++) {
      int a = start + i;
      int b = start + (i + 1) % size;
      builder.triangle(from[a], from[b], to[b]);
      builder.triangle(from[a], to[b], to[a]);
    }
    return start + size;
  }

  private static void cap(MeshBuilder builder, Outline outline, int[] station, boolean start) {
    for (int[] t : Triangulation.of(outline).triangles()) {
      int a = station[t[start ? 1 : 0]];
      int b = station[t[start ? 0 : 1]];
      builder.triangle(a, b, station[t[2]]);
    }
  }
}
