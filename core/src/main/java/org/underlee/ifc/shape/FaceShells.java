package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * Shells of plane and curved faces: faceted and advanced B-reps, with and without hollows, and
 * surface models. A closed surface comes out facing outward whatever way its faces were written.
 */
final class FaceShells {
  private final EdgeLoops loops;
  private final Surfaces surfaces;

  FaceShells(Curves curves) {
    loops = new EdgeLoops(curves);
    surfaces = new Surfaces(curves);
  }

  Map<String, ItemReader> readers() {
    return Map.of(
        "IFCFACETEDBREP", this::brep,
        "IFCFACETEDBREPWITHVOIDS", this::brep,
        "IFCADVANCEDBREP", this::brep,
        "IFCADVANCEDBREPWITHVOIDS", this::brep,
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

  private void face(StepInstance face, MeshBuilder builder) {
    List<List<Vec3>> rings = new ArrayList<>();
    int outer = -1;
    for (StepInstance bound : face.followAll(0)) {
      if (bound.keyword().equals("IFCFACEOUTERBOUND") && outer < 0) {
        outer = rings.size();
      }
      rings.add(loops.ring(bound));
    }
    Optional<StepInstance> surface = curvedSurface(face);
    // Exporters leave faces without bounds behind where a sliver of a face vanished.
    if (rings.isEmpty()) {
      return;
    }
    try {
      if (surface.isPresent()) {
        CurvedFace.add(surfaces.read(surface.get()), rings, face.isTrue(2), builder);
      } else {
        builder.face(rings.remove(outer < 0 ? largest(rings) : outer), rings);
      }
    } catch (IllegalArgumentException e) {
      throw Unreadable.degenerate(face, String.valueOf(e.getMessage()));
    }
  }

  private static Optional<StepInstance> curvedSurface(StepInstance face) {
    return switch (face.keyword()) {
      case "IFCFACE" -> Optional.empty();
      case "IFCFACESURFACE", "IFCADVANCEDFACE" ->
          Optional.of(face.follow(1)).filter(s -> !s.keyword().equals("IFCPLANE"));
      default -> throw Unreadable.unsupported(face, " as a face");
    };
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
