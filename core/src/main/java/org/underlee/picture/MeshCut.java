package org.underlee.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.underlee.geom.Mesh;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Triangulation;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/**
 * What is left of a mesh on one side of a plane. The new corners lie where {@link MeshSlice} puts
 * the corners of the cut face, so a closed mesh and its cut face fit together without a gap.
 */
final class MeshCut {
  private final Mesh mesh;
  private final Transform plane;
  private final List<Vec3> corners = new ArrayList<>();

  private MeshCut(Mesh mesh, Transform plane) {
    this.mesh = mesh;
    this.plane = plane;
  }

  /**
   * The part behind a plane, open where it was cut.
   *
   * @param plane a rigid frame; what has an x above zero in it is cut away
   */
  static Mesh behind(Mesh mesh, Transform plane) {
    MeshCut cut = new MeshCut(mesh, plane);
    for (int t = 0; t < mesh.triangleCount(); t++) {
      cut.triangle(t);
    }
    return soup(cut.corners);
  }

  /** The face that the plane cuts through a closed mesh; empty for one that is not closed. */
  static Mesh face(Mesh mesh, Transform plane) {
    List<Vec3> corners = new ArrayList<>();
    for (Outline outline : MeshSlice.of(mesh, plane, 0)) {
      Triangulation cut = Triangulation.of(outline);
      for (int[] t : cut.triangles()) {
        for (int k = 0; k < 3; k++) {
          Vec2 p = cut.points().get(t[k]);
          corners.add(plane.apply(new Vec3(0, p.x(), p.y())));
        }
      }
    }
    return soup(corners);
  }

  private void triangle(int t) {
    List<Vec3> kept = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      Vec3 from = mesh.point(t, k);
      Vec3 a = plane.toLocal(from);
      Vec3 b = plane.toLocal(mesh.point(t, (k + 1) % 3));
      if (a.x() < 0) {
        kept.add(from);
      }
      if (a.x() < 0 != b.x() < 0) {
        kept.add(plane.apply(MeshSlice.crossing(a, b, 0)));
      }
    }
    for (int i = 1; i + 1 < kept.size(); i++) {
      add(kept.get(0), kept.get(i), kept.get(i + 1));
    }
  }

  /** Adds a triangle unless a corner in the plane has left nothing of it. */
  private void add(Vec3 a, Vec3 b, Vec3 c) {
    if (!a.equals(b) && !b.equals(c) && !c.equals(a)) {
      corners.addAll(List.of(a, b, c));
    }
  }

  private static Mesh soup(List<Vec3> corners) {
    double[] xyz = new double[3 * corners.size()];
    for (int i = 0; i < corners.size(); i++) {
      xyz[3 * i] = corners.get(i).x();
      xyz[3 * i + 1] = corners.get(i).y();
      xyz[3 * i + 2] = corners.get(i).z();
    }
    int[] numbers = new int[corners.size()];
    Arrays.setAll(numbers, i -> i);
    return new Mesh(xyz, numbers);
  }
}
