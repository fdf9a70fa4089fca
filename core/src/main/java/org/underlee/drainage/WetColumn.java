package org.underlee.drainage;

import java.util.List;

/**
 * What standing water takes of columns: the part of their plan where the floor is below the level.
 *
 * @param area of its surface, m²
 * @param volume m³
 */
record WetColumn(double area, double volume) {
  /** Water shallower than this in the mean is rounding, metres. */
  private static final double ROUNDING = 1e-9;

  /** Exact but for rounding: floors and level are planes. */
  static WetColumn of(List<Layer> floors, double level) {
    double area = 0;
    double volume = 0;
    Shore shore = new Shore();
    for (Layer floor : floors) {
      shore.walk(floor.column(), floor.top(), level);
      if (shore.volume > ROUNDING * shore.area) {
        area += shore.area;
        volume += shore.volume;
      }
    }
    return new WetColumn(area, volume);
  }

  /** Walks around a column and adds up triangles from the first wet place. */
  private static final class Shore {
    private double firstU;
    private double firstV;
    private double firstDepth;
    private double lastU;
    private double lastV;
    private double lastDepth;
    private int count;
    private double area;
    private double volume;

    void walk(Column c, Facet floor, double level) {
      count = 0;
      area = 0;
      volume = 0;
      double lowLeft = level - floor.at(c.left(), c.lowLeft());
      double lowRight = level - floor.at(c.right(), c.lowRight());
      double highRight = level - floor.at(c.right(), c.highRight());
      double highLeft = level - floor.at(c.left(), c.highLeft());
      edge(c.left(), c.lowLeft(), lowLeft, c.right(), c.lowRight(), lowRight);
      edge(c.right(), c.lowRight(), lowRight, c.right(), c.highRight(), highRight);
      edge(c.right(), c.highRight(), highRight, c.left(), c.highLeft(), highLeft);
      edge(c.left(), c.highLeft(), highLeft, c.left(), c.lowLeft(), lowLeft);
    }

    /**
     * The next edge of the outline.
     *
     * @param d0 depth at one end, below zero where the floor is above the level; likewise d1
     */
    private void edge(double u0, double v0, double d0, double u1, double v1, double d1) {
      if (d0 >= 0) {
        corner(u0, v0, d0);
      }
      if ((d0 > 0 && d1 < 0) || (d0 < 0 && d1 > 0)) {
        double share = d0 / (d0 - d1);
        corner(u0 + share * (u1 - u0), v0 + share * (v1 - v0), 0);
      }
    }

    private void corner(double u, double v, double depth) {
      if (count == 0) {
        firstU = u;
        firstV = v;
        firstDepth = depth;
      } else {
        double cross = (lastU - firstU) * (v - firstV) - (u - firstU) * (lastV - firstV);
        area += cross / 2;
        volume += cross / 2 * (firstDepth + lastDepth + depth) / 3;
      }
      lastU = u;
      lastV = v;
      lastDepth = depth;
      count++;
    }
  }
}
