package org.underlee.picture;

import java.util.List;

/**
 * A plan as a vector drawing; later items lie over earlier ones. Built by {@link PlanBuilder};
 * written by {@link Svg} and {@link PlanRaster}.
 */
public record PlanDrawing(String title, List<PlanItem> items) {
  public PlanDrawing {
    items = List.copyOf(items);
  }
}
