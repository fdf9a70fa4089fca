package org.underlee.ifc.shape;

import java.util.ArrayList;
import java.util.List;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * The line of a road, a rail or a bridge: a plan of segments end to end, by the horizontal length
 * along it, and the height over that length. File units.
 */
final class SegmentedAlignment implements Alignment {
  /** Newton's steps to the place of a height segment at a length: slopes are nearly even. */
  private static final int NEWTON_STEPS = 8;

  /** Lengths nearer than this to a segment's end are in it. */
  private static final double SAME = 1e-9;

  private final List<AlignmentSegment> plan;

  /** Segments in a plane of length and height; none for a line at height zero. */
  private final List<AlignmentSegment> heights;

  private SegmentedAlignment(List<AlignmentSegment> plan, List<AlignmentSegment> heights) {
    this.plan = plan;
    this.heights = heights;
  }

  static Alignment of(StepInstance curve) {
    return curve.keyword().equals("IFCGRADIENTCURVE")
        ? new SegmentedAlignment(segments(curve.follow(2)), segments(curve))
        : new SegmentedAlignment(segments(curve), List.of());
  }

  private static List<AlignmentSegment> segments(StepInstance curve) {
    switch (curve.keyword()) {
      case "IFCGRADIENTCURVE", "IFCCOMPOSITECURVE" -> {}
      default -> throw Unreadable.unsupported(curve, " as a line in plan");
    }
    List<AlignmentSegment> segments = new ArrayList<>();
    for (StepInstance segment : curve.followAll(0)) {
      AlignmentSegment read = AlignmentSegment.of(segment);
      // A segment without length marks the end.
      if (read.length() > 0) {
        segments.add(read);
      }
    }
    if (segments.isEmpty()) {
      throw Unreadable.degenerate(curve, "it has no segments with a length");
    }
    return segments;
  }

  @Override
  public Station at(double length) {
    double rest = length;
    int i = 0;
    while (i + 1 < plan.size() && rest > plan.get(i).length() + SAME) {
      rest -= plan.get(i).length();
      i++;
    }
    AlignmentSegment segment = plan.get(i);
    Station flat = segment.at(rest);
    if (heights.isEmpty()) {
      return flat;
    }
    Station height = height(length);
    Vec3 run = flat.tangent().times(height.tangent().x());
    return Station.on(
        new Vec3(flat.point().x(), flat.point().y(), height.point().y()),
        new Vec3(run.x(), run.y(), height.tangent().y()).unit());
  }

  /** Over the length: x is the length and y the height. */
  private Station height(double length) {
    AlignmentSegment segment = heights.get(0);
    for (AlignmentSegment next : heights) {
      if (next.at(0).point().x() <= length + SAME) {
        segment = next;
      }
    }
    double along = length - segment.at(0).point().x();
    Station there = segment.at(along);
    for (int i = 0; i < NEWTON_STEPS; i++) {
      if (!(there.tangent().x() > 0)) {
        throw new IllegalArgumentException("its line stands upright");
      }
      along += (length - there.point().x()) / there.tangent().x();
      there = segment.at(along);
    }
    return there;
  }
}
