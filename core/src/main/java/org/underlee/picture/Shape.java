package org.underlee.picture;

import org.underlee.geom.Mesh;

/**
 * One thing to draw. A closed mesh is drawn from its outside only, whichever way its faces run; an
 * open one from both sides.
 *
 * @param id what picking answers; above zero; several shapes may share one
 * @param label what to call it when it is picked
 * @param mesh its surface in world metres
 * @param edges whether its creases and borders are drawn as lines
 */
public record Shape(int id, String label, Mesh mesh, Paint paint, boolean edges) {
  /**
   * @throws IllegalArgumentException when the id is not above zero
   */
  public Shape {
    if (id <= 0) {
      throw new IllegalArgumentException(
          "the shape '" + label + "' has the id " + id + "; zero means background");
    }
  }
}
