package org.underlee.framing;

import java.util.Optional;
import org.underlee.geom.OrientedBox;

/**
 * A bar-shaped building element with its measured box.
 *
 * @param told the role that the user gave it
 */
public record Member(BuildingElement element, OrientedBox box, Optional<Role> told) {
  /** A bar counts as level up to this rise in its own length (sine of 5°): steeper is a rafter. */
  private static final double LEVEL = 0.0872;

  /** An axis this steep (sine of 80°) is upright. */
  private static final double UPRIGHT = 0.9848;

  /** A post is higher than this share of what it measures in plan. */
  private static final double BENT = 0.5;

  public String id() {
    return element.globalId();
  }

  boolean isTold(Role role) {
    return told.equals(Optional.of(role));
  }

  public boolean isLevel() {
    return Math.abs(box.axis().z()) <= LEVEL;
  }

  public boolean isUpright() {
    return Math.abs(box.axis().z()) >= UPRIGHT;
  }

  /**
   * Whether it is a bent bar, such as a curved rim: its upright edges tell its axis, and it is much
   * longer in plan than it is high.
   */
  public boolean isBent() {
    return isUpright() && box.length() < BENT * Math.max(box.width(), box.depth());
  }

  /** Whether its name, type or predefined type has any of the words, in any case. */
  public boolean isCalled(String... words) {
    String all =
        (element.name() + " " + element.typeName() + " " + element.predefinedType())
            .toLowerCase(java.util.Locale.ROOT);
    for (String word : words) {
      if (all.contains(word)) {
        return true;
      }
    }
    return false;
  }

  /** Members are the same when they are the same instance of the file. */
  @Override
  public boolean equals(Object o) {
    return o instanceof Member m && m.element.instance() == element.instance();
  }

  @Override
  public int hashCode() {
    return Long.hashCode(element.instance());
  }
}
