package org.underlee.picture;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.underlee.geom.Interval;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/** How far a thing reaches in the frame of its field: across and along the joists, and up. */
record LocalReach(Interval across, Interval along, Interval heights) {
  static LocalReach of(Mesh mesh, Transform frame) {
    List<Vec3> points =
        IntStream.range(0, mesh.vertexCount())
            .mapToObj(i -> frame.toLocal(mesh.vertex(i)))
            .toList();
    return new LocalReach(reach(points, Vec3::x), reach(points, Vec3::y), reach(points, Vec3::z));
  }

  private static Interval reach(List<Vec3> points, ToDoubleFunction<Vec3> axis) {
    return new Interval(
        points.stream().mapToDouble(axis).min().orElseThrow(),
        points.stream().mapToDouble(axis).max().orElseThrow());
  }
}
