package org.underlee.drainage;

import org.underlee.geom.Mesh;

/**
 * A solid that water meets: a part of an assembly, of whatever kit, or a joist.
 *
 * @param id as in the layout, or the GlobalId of a framing member
 * @param shape closed, in world metres; parts of it may touch
 * @param sealed whether its holes are closed around what goes through
 */
public record Piece(String id, Kind kind, Mesh shape, boolean sealed) {
  /** How water behaves on a piece. */
  public enum Kind {
    /** Sheet that carries water: pans, rails, strips, collars, end caps, hangers. */
    SHEET,
    /** Carries water to an outlet, and stands full when the outlet is blocked. */
    GUTTER,
    /** Takes water out of the gutter above it. */
    OUTLET,
    /** Downspout or elbow. */
    PIPE,
    /** Framing: its top sheds to both sides, and the water keeps to its faces. */
    JOIST
  }
}
