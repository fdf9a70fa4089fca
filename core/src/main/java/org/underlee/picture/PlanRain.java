package org.underlee.picture;

import java.util.List;
import java.util.Map;
import org.underlee.geom.Vec3;

/**
 * Where the rain on decks goes, as a plan shows it; places are world metres.
 *
 * @param outlets by the id of the part: the area of each bay that it drains, m²
 * @param open regions of deck where nothing is hung
 * @param through where rain gets through what is hung
 */
public record PlanRain(
    Map<String, Map<String, Double>> outlets, List<List<Vec3>> open, List<Through> through) {
  public PlanRain {
    outlets = Map.copyOf(outlets);
    open = List.copyOf(open);
    through = List.copyOf(through);
  }

  /**
   * A place where it does.
   *
   * @param landed regions that its rain lands on
   */
  public record Through(Vec3 at, List<List<Vec3>> landed) {
    public Through {
      landed = List.copyOf(landed);
    }
  }
}
