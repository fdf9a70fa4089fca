package org.underlee.drainage;

import java.util.List;
import org.underlee.geom.Vec3;

/**
 * Water that reaches no outlet.
 *
 * @param field {@code deck-1/field-1}
 * @param bay where it gets through: {@code B3}
 * @param at one place where it does, world metres
 * @param area of deck whose rain goes this way, m²
 * @param parts that it last runs over or out of; none where rain falls straight through
 * @param regions where that rain lands, world metres
 */
public record Leak(
    String field,
    String bay,
    LeakCause cause,
    Vec3 at,
    double area,
    List<String> parts,
    List<List<Vec3>> regions) {
  private static final double LITRES_PER_MM = 1;

  public Leak {
    parts = List.copyOf(parts);
    regions = List.copyOf(regions);
  }

  /**
   * How much comes through.
   *
   * @param millimetresPerHour of rain
   * @return litres per hour: 1 mm on 1 m² is 1 litre
   */
  public double litresPerHour(double millimetresPerHour) {
    return area * millimetresPerHour * LITRES_PER_MM;
  }
}
