package org.underlee.samples.cases;

import java.util.List;

/**
 * One element of a case.
 *
 * @param key its name within the case; its GlobalId derives from it
 * @param role what the survey should say it is: a role's word, {@code none}, or several with bars
 *     between them where each is right
 * @param level index of its storey
 * @param bodies in the frame of the case
 */
public record Piece(String key, Kind kind, String role, int level, List<Body> bodies) {
  /** What the file may say about it; nothing tells a joist from a beam. */
  public enum Kind {
    BAR,
    UPRIGHT,
    BOARD,
    WALL,
    SLAB,
    RAILING,
    FITTING,
    SERVICE
  }
}
