package org.underlee.report.packet.web;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.picture.Camera;
import org.underlee.picture.Paint;
import org.underlee.picture.Scene;
import org.underlee.picture.Shape;

/**
 * A scene as numbers for the page: triangle corners as whole steps of the scene's box, grouped by
 * colour, faded ones last.
 */
final class SceneData {
  /** Steps along the longest side of the box: a deck of 30 m is met to half a millimetre. */
  private static final double STEPS = 65_000;

  private static final int OFFSET = 32_500;
  private static final int BYTES_PER_CORNER = 3 * Short.BYTES;

  private SceneData() {}

  /** {@code {"eye":[…],"middle":[…],"height":1.1,"groups":[{"rgb":…,"opacity":1,"data":"…"}]}}. */
  static String json(Scene scene, Camera camera) {
    Box box = scene.bounds();
    Vec3 size = box.size();
    double span = Math.max(size.x(), Math.max(size.y(), size.z()));
    Map<Paint, List<Mesh>> paints = new LinkedHashMap<>();
    for (boolean solid : new boolean[] {true, false}) {
      for (Shape shape : scene.shapes()) {
        if (shape.paint().isSolid() == solid) {
          paints.computeIfAbsent(shape.paint(), p -> new ArrayList<>()).add(shape.mesh());
        }
      }
    }
    Vec3 eye = camera.frame().z();
    Vec3 middle = camera.frame().origin().minus(box.centre()).times(1 / span);
    StringBuilder json =
        new StringBuilder(
            String.format(
                Locale.ROOT,
                "{\"eye\":[%.4f,%.4f,%.4f],\"middle\":[%.4f,%.4f,%.4f],\"height\":%.4f,",
                eye.x(),
                eye.y(),
                eye.z(),
                middle.x(),
                middle.y(),
                middle.z(),
                camera.height() / span));
    json.append("\"groups\":[");
    String between = "";
    for (Map.Entry<Paint, List<Mesh>> group : paints.entrySet()) {
      json.append(between)
          .append(
              String.format(
                  Locale.ROOT,
                  "{\"rgb\":%d,\"opacity\":%.2f,\"data\":\"",
                  group.getKey().rgb(),
                  group.getKey().opacity()))
          .append(corners(group.getValue(), box.centre(), span))
          .append("\"}");
      between = ",";
    }
    return json.append("]}").toString();
  }

  private static String corners(List<Mesh> meshes, Vec3 centre, double span) {
    int triangles = meshes.stream().mapToInt(Mesh::triangleCount).sum();
    ByteBuffer bytes =
        ByteBuffer.allocate(3 * triangles * BYTES_PER_CORNER).order(ByteOrder.LITTLE_ENDIAN);
    for (Mesh mesh : meshes) {
      for (int t = 0; t < mesh.triangleCount(); t++) {
        for (int c = 0; c < 3; c++) {
          Vec3 p = mesh.point(t, c).minus(centre).times(1 / span);
          bytes.putShort(step(p.x())).putShort(step(p.y())).putShort(step(p.z()));
        }
      }
    }
    return Base64.getEncoder().encodeToString(bytes.array());
  }

  private static short step(double share) {
    return (short) Math.max(-OFFSET, Math.min(OFFSET, Math.round(share * STEPS)));
  }
}
