package org.underlee.panel.model;

import java.util.EnumMap;
import java.util.Map;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.picture.SectionBox;

/**
 * Which part of the picture is looked into, as shares of its own size.
 *
 * @param on whether anything is cut away
 * @param ranges one for each axis
 */
public record Section(boolean on, Map<Axis, Range> ranges) {
  /** Room about what is looked at when the box is put around it, metres. */
  private static final double ROOM = 0.05;

  /** The axes of the first field. */
  public enum Axis {
    ACROSS("across the joists"),
    ALONG("along the joists"),
    UP("in height");

    private final String words;

    Axis(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    double of(Vec3 p) {
      return switch (this) {
        case ACROSS -> p.x();
        case ALONG -> p.y();
        case UP -> p.z();
      };
    }
  }

  /** What is kept along an axis, from 0 to 1; never less than nothing. */
  public record Range(double from, double to) {
    static final Range WHOLE = new Range(0, 1);

    /** Keeps this much of the whole between the ends. */
    private static final double LEAST = 0.01;

    public Range {
      from = Math.max(0, Math.min(1 - LEAST, from));
      to = Math.max(from + LEAST, Math.min(1, to));
    }

    public Range withFrom(double share) {
      return new Range(Math.min(share, to - LEAST), to);
    }

    public Range withTo(double share) {
      return new Range(from, share);
    }

    boolean isWhole() {
      return from <= 0 && to >= 1;
    }
  }

  public static final Section OFF = new Section(false, whole());

  public Section {
    ranges = Map.copyOf(ranges);
  }

  private static Map<Axis, Range> whole() {
    Map<Axis, Range> all = new EnumMap<>(Axis.class);
    for (Axis axis : Axis.values()) {
      all.put(axis, Range.WHOLE);
    }
    return all;
  }

  public Range range(Axis axis) {
    return ranges.getOrDefault(axis, Range.WHOLE);
  }

  public Section with(Axis axis, Range range) {
    Map<Axis, Range> others = new EnumMap<>(ranges);
    others.put(axis, range);
    return new Section(on, others);
  }

  public Section turned(boolean onNow) {
    return new Section(onNow, ranges);
  }

  /** Around a thing, in the same frame as the whole. */
  static Section around(Box thing, Box whole) {
    Section section = OFF.turned(true);
    Box near = thing.grown(ROOM);
    for (Axis axis : Axis.values()) {
      double start = axis.of(whole.min());
      double size = axis.of(whole.max()) - start;
      if (size > 0) {
        double from = (axis.of(near.min()) - start) / size;
        section = section.with(axis, new Range(from, (axis.of(near.max()) - start) / size));
      }
    }
    return section;
  }

  /** The box itself; an end that cuts nothing away is put a little outside. */
  SectionBox box(Transform frame, Box whole) {
    return new SectionBox(frame, new Box(corner(whole, true), corner(whole, false)));
  }

  private Vec3 corner(Box whole, boolean low) {
    return new Vec3(
        end(Axis.ACROSS, whole, low), end(Axis.ALONG, whole, low), end(Axis.UP, whole, low));
  }

  private double end(Axis axis, Box whole, boolean low) {
    double start = axis.of(whole.min());
    double size = axis.of(whole.max()) - start;
    double share = low ? range(axis).from() : range(axis).to();
    double outside = share <= 0 ? -ROOM : share >= 1 ? ROOM : 0;
    return start + share * size + outside;
  }

  boolean cutsNothing() {
    return !on || ranges.values().stream().allMatch(Range::isWhole);
  }
}
