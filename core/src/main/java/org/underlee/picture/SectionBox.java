package org.underlee.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * A box to look into a scene: what is outside of it is cut away, and solids that it cuts show their
 * cut faces in a darker colour.
 *
 * @param frame rigid; the box lies along its axes
 * @param box in the frame
 */
public record SectionBox(Transform frame, Box box) {
  /** What a plane leaves less than this of, or touches no deeper, it does not cut, metres. */
  private static final double TOUCH = 1e-6;

  /** How much of the colour of a cut face is that of ink. */
  private static final double INK = 0.45;

  /** A scene's own size along the axes of a frame; empty when there is nothing in it. */
  public static Box around(Scene scene, Transform frame) {
    return Box.around(scene.shapes().stream().map(s -> local(s.mesh(), frame)).toList());
  }

  /** The box around the corners of the upright box around a mesh: never too small. */
  private static Box local(Mesh mesh, Transform frame) {
    return mesh.isEmpty() ? Box.EMPTY : mesh.bounds().moved(frame.inverse());
  }

  /**
   * The scene within the box. Shapes that are not cut stay the same, and cut faces are shapes with
   * the id of what they belong to.
   */
  public Scene cut(Scene scene) {
    List<Shape> kept = new ArrayList<>();
    for (Shape shape : scene.shapes()) {
      cut(shape, kept);
    }
    return new Scene(kept, scene.notes());
  }

  private void cut(Shape shape, List<Shape> to) {
    Box around = local(shape.mesh(), frame);
    if (around.isEmpty() || !around.meets(box)) {
      return;
    }
    List<Transform> planes = planesThrough(around);
    if (planes.isEmpty()) {
      to.add(shape);
      return;
    }
    Mesh left = shape.mesh();
    Mesh faces = Mesh.EMPTY;
    for (Transform plane : planes) {
      Mesh face = MeshCut.face(Mesh.union(List.of(left, faces)), plane);
      left = MeshCut.behind(left, plane);
      faces = Mesh.union(List.of(MeshCut.behind(faces, plane), face));
    }
    add(shape, left, shape.paint(), to);
    add(shape, faces, cutPaint(shape.paint()), to);
  }

  private static void add(Shape of, Mesh mesh, Paint paint, List<Shape> to) {
    if (!mesh.isEmpty()) {
      to.add(new Shape(of.id(), of.label(), mesh, paint, of.edges()));
    }
  }

  private static Paint cutPaint(Paint paint) {
    return new Paint(Colours.mix(paint.rgb(), Palette.INK, INK) & 0xffffff, paint.opacity());
  }

  /** Those of the six sides that a thing goes through, each as a frame with x outward. */
  private List<Transform> planesThrough(Box thing) {
    return IntStream.range(0, 3)
        .boxed()
        .flatMap(axis -> IntStream.of(-1, 1).mapToObj(way -> new Side(axis, way)))
        .filter(side -> side.cuts(thing, box))
        .map(side -> side.plane(frame, box))
        .toList();
  }

  /** One of the six sides: that of the greater numbers along an axis when {@code way} is 1. */
  private record Side(int axis, int way) {
    boolean cuts(Box thing, Box box) {
      double past = way * (along(end(thing)) - along(end(box)));
      return past > TOUCH;
    }

    Transform plane(Transform frame, Box box) {
      Vec3 out = direction().times(way);
      Vec3 middle = box.centre();
      Vec3 on = middle.plus(direction().times(along(end(box)) - along(middle)));
      Vec3 next = axis == 0 ? Vec3.Y : axis == 1 ? Vec3.Z : Vec3.X;
      return frame.after(new Transform(on, out, next, out.cross(next)));
    }

    private Vec3 end(Box of) {
      return way > 0 ? of.max() : of.min();
    }

    private Vec3 direction() {
      return axis == 0 ? Vec3.X : axis == 1 ? Vec3.Y : Vec3.Z;
    }

    private double along(Vec3 p) {
      return p.dot(direction());
    }
  }
}
