package org.underlee.drainage;

/**
 * What standing water takes of one column: the part of its plan where the floor is below the level.
 *
 * @param area of its surface, m²
 * @param volume m³
 */
record WetColumn(double area, double volume) {
  private static final WetColumn DRY = new WetColumn(0, 0);

  /** Water shallower than this in the mean is rounding, metres. */
  private static final double ROUNDING = 1e-9;

  /** Exact but for rounding: floor and level are planes. */
  static WetColumn of(Column c, Facet floor, double level) {
    Shore shore = new Shore(floor, level);
    shore.edge(c.left(), c.lowLeft(), c.right(), c.lowRight());
    shore.edge(c.right(), c.lowRight(), c.right(), c.highRight());
    shore.edge(c.right(), c.highRight(), c.left(), c.highLeft());
    shore.edge(c.left(), c.highLeft(), c.left(), c.lowLeft());
    return shore.volume <= ROUNDING * shore.area ? DRY : new WetColumn(shore.area, shore.volume);
  }

  /** Walks around a column and adds up triangles from the first wet place. */
  private static final class Shore {
    private final Facet floor;
    private final double level;
    private double firstU;
    private double firstV;
    private double firstDepth;
    private double lastU;
    private double lastV;
    private double lastDepth;
    private int count;
    private double area;
    private double volume;

    Shore(Facet floor, double level) {
      this.floor = floor;
      this.level = level;
    }

    /** The next edge of the outline. */
    void edge(double u0, double v0, double u1, double v1) {
      double d0 = level - floor.at(u0, v0);
      double d1 = level - floor.at(u1, v1);
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
