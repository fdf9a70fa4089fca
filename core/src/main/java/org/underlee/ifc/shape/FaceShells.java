package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * Shells of plane faces bounded by polygons: faceted B-reps, with and without hollows, and surface
 * models. A closed surface comes out facing outward whatever way its faces were written.
 */
final class FaceShells {
  Map<String, ItemReader> readers() {
    return Map.of(
        "IFCFACETEDBREP", this::brep,
        "IFCFACETEDBREPWITHVOIDS", this::brep,
        "IFCSHELLBASEDSURFACEMODEL", this::surfaces,
        "IFCFACEBASEDSURFACEMODEL", this::surfaces,
        "IFCCLOSEDSHELL", shell -> shell(shell, true),
        "IFCOPENSHELL", shell -> shell(shell, false));
  }

  private Mesh brep(StepInstance brep) {
    List<Mesh> shells = new ArrayList<>();
    shells.add(shell(brep.follow(0), true));
    for (StepInstance hollow : brep.followAll(1)) {
      shells.add(MeshBuilder.turned(shell(hollow, true)));
    }
    return Mesh.union(shells);
  }

  private Mesh surfaces(StepInstance model) {
    return Mesh.union(
        model.followAll(0).stream()
            .map(shell -> shell(shell, shell.keyword().equals("IFCCLOSEDSHELL")))
            .toList());
  }

  private Mesh shell(StepInstance shell, boolean closed) {
    MeshBuilder builder = new MeshBuilder();
    for (StepInstance face : shell.followAll(0)) {
      face(face, builder);
    }
    return Orientation.outward(builder.mesh(), closed);
  }

  private static void face(StepInstance face, MeshBuilder builder) {
    requirePlane(face);
    List<List<Vec3>> rings = new ArrayList<>();
    int outer = -1;
    for (StepInstance bound : face.followAll(0)) {
      if (bound.keyword().equals("IFCFACEOUTERBOUND") && outer < 0) {
        outer = rings.size();
      }
      rings.add(ring(bound));
    }
    if (rings.isEmpty()) {
      // Exporters leave such behind where a sliver of a face vanished; there is nothing to draw.
      return;
    }
    List<Vec3> outline = rings.remove(outer < 0 ? largest(rings) : outer);
    try {
      builder.face(outline, rings);
    } catch (IllegalArgumentException e) {
      throw Unreadable.degenerate(face, String.valueOf(e.getMessage()));
    }
  }

  private static void requirePlane(StepInstance face) {
    switch (face.keyword()) {
      case "IFCFACE" -> {}
      case "IFCFACESURFACE" -> {
        StepInstance surface = face.follow(1);
        if (!surface.keyword().equals("IFCPLANE")) {
          throw Unreadable.unsupported(surface, " as the surface of a face");
        }
      }
      default -> throw Unreadable.unsupported(face, " as a face");
    }
  }

  private static List<Vec3> ring(StepInstance bound) {
    StepInstance loop = bound.follow(0);
    if (!loop.keyword().equals("IFCPOLYLOOP")) {
      throw Unreadable.unsupported(loop, " as the bound of a face");
    }
    List<Vec3> ring = new ArrayList<>();
    for (StepInstance point : loop.followAll(0)) {
      ring.add(Axes.point(point));
    }
    if (!bound.isTrue(1)) {
      Collections.reverse(ring);
    }
    return ring;
  }

  /** Which ring is the outer one where the file does not say: the one of the largest area. */
  private static int largest(List<List<Vec3>> rings) {
    int largest = 0;
    for (int i = 1; i < rings.size(); i++) {
      if (area(rings.get(i)) > area(rings.get(largest))) {
        largest = i;
      }
    }
    return largest;
  }

  private static double area(List<Vec3> ring) {
    Vec3 sum = Vec3.ZERO;
    for (int i = 1; i + 1 < ring.size(); i++) {
      Vec3 o = ring.get(0);
      sum = sum.plus(ring.get(i).minus(o).cross(ring.get(i + 1).minus(o)));
    }
    return sum.length() / 2;
  }
}
