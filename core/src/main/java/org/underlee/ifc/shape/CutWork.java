package org.underlee.ifc.shape;

import org.underlee.geom.Mesh;

/**
 * What may be spent on one solid and all that is taken away from it. Counted in steps, not in time,
 * so that a file gives the same on every machine: a long chain of cuts through a curved solid could
 * take minutes, and each cut makes the next one dearer.
 */
public final class CutWork {
  /**
   * Triangles against planes, in all ways that are tried together: some seconds. The most that was
   * seen in public models is 6.0 million.
   */
  static final long MAX_STEPS = 8_000_000;

  /** A cap of so many corners takes as long as cutting so many triangles: each looks for others. */
  private static final int CAP_CORNERS = 128;

  /** So many vertices are looked at in the time that one triangle takes to be cut. */
  private static final int LOOKED_AT = 16;

  private long steps;

  /**
   * More than may be spent. Not a sign of unsound geometry, after which another way is tried: that
   * would cost as much again.
   */
  static final class TooMuch extends RuntimeException {
    private static final long serialVersionUID = 1;

    TooMuch() {
      super("cutting it takes more than " + MAX_STEPS + " steps");
    }
  }

  /** Finds out where a mesh is of a plane. */
  void look(Mesh mesh) {
    spend(mesh.vertexCount() / LOOKED_AT);
  }

  /** Cuts triangles so many times. */
  void cut(int triangles, int times) {
    spend((long) triangles * times);
  }

  /** Closes a cut. */
  void cap(int corners) {
    spend((long) corners * corners / CAP_CORNERS);
  }

  private void spend(long more) {
    steps += more;
    if (steps > MAX_STEPS) {
      throw new TooMuch();
    }
  }
}
