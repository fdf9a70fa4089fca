package org.underlee.framing;

import java.util.Arrays;
import org.underlee.geom.Interval;
import org.underlee.geom.Linear;
import org.underlee.geom.Silhouette;
import org.underlee.geom.Transform;

/**
 * One member of a joist line, seen in the frame of its field (metres).
 *
 * @param shape its faces, underside and top over the station
 */
public record Ply(Member member, Silhouette shape) {
  static Ply of(Member member, Transform frame) {
    return new Ply(member, Silhouette.of(member.element().shape(), frame, member.box().depth()));
  }

  public Interval stretch() {
    return shape.along();
  }

  double centre(double v) {
    return (shape.left().at(v) + shape.right().at(v)) / 2;
  }

  double width(double v) {
    return shape.right().at(v) - shape.left().at(v);
  }

  /** Of its section, without the bow and twist along its length. */
  double depth() {
    Interval s = stretch();
    double[] at = {s.from() + s.length() / 4, s.middle(), s.to() - s.length() / 4};
    double[] depths =
        Arrays.stream(at).map(v -> shape.top().at(v) - shape.bottom().at(v)).sorted().toArray();
    return depths[0];
  }

  /** The straight line along its left face that no part of the face lies left of. */
  Linear outerLeft(double slope) {
    return new Linear(least(shape.left(), slope, 1), slope);
  }

  Linear outerRight(double slope) {
    return new Linear(-least(shape.right(), slope, -1), slope);
  }

  Linear lowest(double slope) {
    return new Linear(least(shape.bottom(), slope, 1), slope);
  }

  private double least(org.underlee.geom.Profile profile, double slope, int sign) {
    double least = Double.POSITIVE_INFINITY;
    for (double v : ends(profile.bends(stretch()))) {
      least = Math.min(least, sign * (profile.at(v) - slope * v));
    }
    return least;
  }

  private double[] ends(double[] bends) {
    double[] all = Arrays.copyOf(bends, bends.length + 2);
    all[bends.length] = stretch().from();
    all[bends.length + 1] = stretch().to();
    return all;
  }
}
