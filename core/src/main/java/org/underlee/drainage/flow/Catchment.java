package org.underlee.drainage.flow;

import java.util.List;

/**
 * What rain a deck gathers, in square metres of plan.
 *
 * <p>Source: half of a wall that sheds onto the deck by IPC 1106.4, and the same by EN 12056-3
 * (rain at two down to one across), both second hand; roof pitch factors as published by a
 * builders' guide.
 *
 * @param deck plan area out to the drip edge
 * @param walls areas of walls that shed rain onto the deck
 * @param roofs higher roofs whose water falls or is led onto the deck
 */
public record Catchment(double deck, List<Double> walls, List<Roof> roofs) {
  private static final double SHARE_OF_WALL = 0.5;
  private static final double PER_TWELVE = 12;

  /** A pitch of 5 in 12 is not a fraction that a double holds. */
  private static final double ROUNDING = 1e-9;

  /**
   * A roof above.
   *
   * @param plan its plan area
   * @param pitch rise over run
   */
  public record Roof(double plan, double pitch) {
    public Roof {
      notNegative("a roof's plan area", plan);
      notNegative("a roof's pitch", pitch);
    }

    /**
     * Bands of the builders' guide: to 3:12, to 5:12, to 8:12, to 11:12, steeper; a pitch between
     * two bands counts as the steeper.
     */
    public double factor() {
      double rise = pitch * PER_TWELVE - ROUNDING;
      if (rise <= 3) {
        return 1;
      }
      if (rise <= 5) {
        return 1.05;
      }
      if (rise <= 8) {
        return 1.1;
      }
      return rise <= 11 ? 1.2 : 1.3;
    }

    double effective() {
      return plan * factor();
    }
  }

  public Catchment {
    notNegative("the deck's area", deck);
    walls = List.copyOf(walls);
    walls.forEach(w -> notNegative("a wall's area", w));
    roofs = List.copyOf(roofs);
  }

  public double fromWalls() {
    return SHARE_OF_WALL * walls.stream().mapToDouble(Double::doubleValue).sum();
  }

  public double fromRoofs() {
    return roofs.stream().mapToDouble(Roof::effective).sum();
  }

  /** The area to multiply by the intensity. */
  public double effective() {
    return deck + fromWalls() + fromRoofs();
  }

  private static void notNegative(String what, double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(what + " is " + value + ", expected zero or more");
    }
  }
}
