package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.underlee.bay.Bay;
import org.underlee.finding.Finding;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.framing.BuildingElement;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;
import org.underlee.units.Words;

/**
 * Posts and stairs do not stand in a pan. Judged by the edges of their surfaces: an edge that runs
 * through the space of a pan is surely in its way; what is missed is told by the crossings.
 */
public final class InTheWay implements Check {
  static final Rule STANDS =
      new Rule(
          "post-or-stair-in-pan",
          Level.ERROR,
          Rule.COMMON_PRACTICE + ": a collar around it, or the bay is split",
          "A post or a stair stands where a pan is drawn.");

  private static final Set<String> CLASSES =
      Set.of(
          "IfcColumn",
          "IfcColumnStandardCase",
          "IfcStair",
          "IfcStairFlight",
          "IfcRailing",
          "IfcRamp",
          "IfcRampFlight");

  /** Faces touch: what reaches less than this into a pan's space does not stand in it. */
  private static final double TOUCH = 0.001;

  @Override
  public List<Rule> rules() {
    return List.of(STANDS);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    List<BuildingElement> upright = input.ofClass(CLASSES);
    for (Assembled f : input.fields()) {
      for (BuildingElement element : upright) {
        Box own = f.boxOf(element);
        for (Bay bay : f.bays().bays()) {
          if (f.pansOf(bay).stream().anyMatch(p -> stands(f, element, own, p.box()))) {
            found.add(finding(f, bay, element));
          }
        }
      }
    }
    return Answer.found(found);
  }

  private static boolean stands(Assembled f, BuildingElement element, Box own, Box pan) {
    Box inner = pan.grown(-TOUCH);
    return inner.meets(own) && anyEdge(f, element.shape(), inner);
  }

  private static boolean anyEdge(Assembled f, Mesh mesh, Box box) {
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        Vec3 a = f.frame().toLocal(mesh.point(t, k));
        Vec3 b = f.frame().toLocal(mesh.point(t, (k + 1) % 3));
        if (passes(a, b, box)) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether a straight edge runs through a box: its stretches between the box's three slabs. */
  private static boolean passes(Vec3 a, Vec3 b, Box box) {
    double[] reach = {0, 1};
    return slab(reach, a.x(), b.x(), box.min().x(), box.max().x())
        && slab(reach, a.y(), b.y(), box.min().y(), box.max().y())
        && slab(reach, a.z(), b.z(), box.min().z(), box.max().z());
  }

  private static boolean slab(double[] reach, double from, double to, double low, double high) {
    double run = to - from;
    if (run == 0) {
      return from > low && from < high;
    }
    double one = (low - from) / run;
    double other = (high - from) / run;
    reach[0] = Math.max(reach[0], Math.min(one, other));
    reach[1] = Math.min(reach[1], Math.max(one, other));
    return reach[0] < reach[1];
  }

  private static Finding finding(Assembled f, Bay bay, BuildingElement element) {
    return Finding.of(
            STANDS,
            element.place(),
            Words.of("%s #%s stands in the %s.", element.ifcClass(), element.instance(), f.piece()),
            "Leave the bay open, or split it and close the pan around what stands there.")
        .about(f.subject(bay, Optional.empty()));
  }
}
