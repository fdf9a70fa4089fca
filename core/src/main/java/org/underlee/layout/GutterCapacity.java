package org.underlee.layout;

import java.util.List;
import org.underlee.framing.Field;
import org.underlee.geom.Interval;
import org.underlee.kit.Kit;

/** Says how much of the rain that is asked for a gutter of the kit carries, to one outlet. */
@FunctionalInterface
public interface GutterCapacity {
  /** Where the rain does not decide. */
  GutterCapacity ENOUGH = (kit, stretch, outlet, shares) -> new Use(0, "");

  /**
   * The area whose rain comes down from above onto a part of a field: of walls, as far as codes
   * count it.
   *
   * @param across in the field's frame
   * @return m²
   */
  default double fromAbove(Field field, Interval across) {
    return 0;
  }

  /**
   * What drips into a part of a gutter.
   *
   * @param area of deck whose rain it is, m²
   */
  record Share(Interval across, double area) {}

  /**
   * The part of its capacity that is used.
   *
   * @param share above 1 it runs over
   * @param by the method that decides
   */
  record Use(double share, String by) {}

  /**
   * The harder used of a gutter and its outlet with downspout.
   *
   * @param stretch of gutter that falls to one outlet, along the gutter; likewise the shares
   * @param outlet its place
   */
  Use of(Kit kit, Interval stretch, double outlet, List<Share> shares);

  /** Whether that is no more than all of it. */
  default boolean carries(Kit kit, Interval stretch, double outlet, List<Share> shares) {
    return carries(kit, stretch, outlet, shares, 1);
  }

  /**
   * Whether it carries so many times the rain.
   *
   * @param times more than 0
   */
  default boolean carries(
      Kit kit, Interval stretch, double outlet, List<Share> shares, double times) {
    return of(kit, stretch, outlet, shares).share() * times <= 1;
  }
}
