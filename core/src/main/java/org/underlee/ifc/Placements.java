package org.underlee.ifc;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.underlee.finding.InputException;
import org.underlee.geom.Transform;
import org.underlee.ifc.shape.Axes;
import org.underlee.ifc.shape.GridPoints;
import org.underlee.ifc.shape.Unreadable;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;

/**
 * Object placements in the world: rigid frames in metres. Local placements and placements on grids,
 * of any depth; a linear placement anywhere in the chain is refused, and so is a chain that comes
 * back to itself. The world coordinate system of the context and map conversions are left aside, as
 * viewers do.
 */
final class Placements {
  private static final String LOCAL = "IFCLOCALPLACEMENT";

  private final StepFile step;
  private final double metresPerUnit;
  private final Map<Long, Transform> known = new HashMap<>();

  /** Which grid has an axis. */
  private final Map<Long, Long> grids = new HashMap<>();

  Placements(StepFile step, double metresPerUnit) {
    this.step = step;
    this.metresPerUnit = metresPerUnit;
  }

  /** The frame of the placement with this number. */
  Transform world(long id) {
    StepInstance at = step.instance(id);
    Transform outermost = known.get(id) == null ? standsIn(at) : null;
    // Most elements stand in a storey that is known: it need not be decoded again.
    return outermost == null ? alongChain(at) : outermost.after(relative(at));
  }

  /** The frame that a placement is relative to, where it is known already. */
  private @Nullable Transform standsIn(StepInstance placement) {
    return placement.keyword().equals(LOCAL) && placement.isReference(0)
        ? known.get(placement.ref(0))
        : null;
  }

  private Transform alongChain(StepInstance innermost) {
    Map<Long, StepInstance> chain = new LinkedHashMap<>();
    Deque<StepInstance> inwards = new ArrayDeque<>();
    Transform frame = Transform.IDENTITY;
    StepInstance at = innermost;
    while (true) {
      Transform done = known.get(at.id());
      if (done != null) {
        frame = done;
        break;
      }
      if (chain.put(at.id(), at) != null) {
        throw cycle(at, chain);
      }
      inwards.push(at);
      Optional<StepInstance> outer = outer(at);
      if (outer.isEmpty()) {
        break;
      }
      at = outer.get();
    }
    for (StepInstance placement : inwards) {
      frame = frame.after(relative(placement));
      if (placement != innermost) {
        // What something stands in is asked for again and again; its own place is not.
        known.put(placement.id(), frame);
      }
    }
    return frame;
  }

  /** What a placement is relative to: another, or for one on a grid, the grid's own. */
  private Optional<StepInstance> outer(StepInstance placement) {
    return switch (placement.keyword()) {
      case LOCAL -> placement.optionalFollow(0);
      case "IFCGRIDPLACEMENT" -> grid(placement).optionalFollow(5);
      default -> throw Unreadable.unsupported(placement, " as the placement of an object");
    };
  }

  private StepInstance grid(StepInstance placement) {
    if (grids.isEmpty()) {
      for (int index : step.ofKeyword("IFCGRID")) {
        StepInstance grid = step.decode(index);
        for (int axes = 7; axes <= 9; axes++) {
          for (long axis : grid.refs(axes)) {
            grids.put(axis, grid.id());
          }
        }
      }
    }
    Long id = grids.get(GridPoints.anAxis(placement));
    if (id == null) {
      throw placement.error("no grid has the axes that this placement names");
    }
    return step.instance(id);
  }

  private Transform relative(StepInstance placement) {
    Transform local =
        placement.keyword().equals("IFCGRIDPLACEMENT")
            ? GridPoints.placement(placement)
            : Axes.placement(placement.follow(1));
    return new Transform(local.origin().times(metresPerUnit), local.x(), local.y(), local.z());
  }

  private static InputException cycle(StepInstance at, Map<Long, StepInstance> chain) {
    String numbers =
        chain.keySet().stream()
            .dropWhile(id -> id != at.id())
            .map(id -> "#" + id)
            .collect(Collectors.joining(" → "));
    return new InputException(
        at.place(),
        at.place()
            + ": placements are relative to each other in a circle: "
            + numbers
            + " → #"
            + at.id(),
        "Have the program that wrote the file export it again.");
  }
}
