package org.underlee.drainage;

import java.util.List;
import org.underlee.geom.Vec2;

/**
 * The part of the deck plan whose rain one bay answers for: out to the middle of the joist lines
 * beside it.
 *
 * @param outline in the frame of the case, metres
 */
public record Catchment(String bay, List<Vec2> outline) {
  public Catchment {
    outline = List.copyOf(outline);
  }
}
