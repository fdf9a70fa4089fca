package org.underlee.picture;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Envelope;
import org.underlee.geom.Vec2;

/**
 * A plan as a vector drawing; later items lie over earlier ones. Built by {@link PlanBuilder};
 * written by {@link Svg} and {@link PlanRaster}.
 */
public record PlanDrawing(String title, List<PlanItem> items) {
  public PlanDrawing {
    items = List.copyOf(items);
  }

  /**
   * The same with those texts for which there is room on a sheet, so that none lies on another:
   * names on plates come first, then the first in order. The line from a text that is left out to
   * what it speaks of is left out too. For a screen, which a person can bring nearer; on paper each
   * text must be there.
   */
  public PlanDrawing legibleOn(PlanSheet sheet) {
    List<Envelope> taken = new ArrayList<>();
    Set<PlanItem> left = Collections.newSetFromMap(new IdentityHashMap<>());
    items.stream()
        .filter(PlanItem.Label.class::isInstance)
        .map(PlanItem.Label.class::cast)
        .sorted(Comparator.comparing(l -> l.style().fill().isEmpty()))
        .forEach(
            label -> {
              Envelope own = new Envelope();
              LabelBox.plate(label, sheet).forEach(c -> own.expandToInclude(c.x(), c.y()));
              if (taken.stream().noneMatch(own::intersects)) {
                taken.add(own);
              } else {
                left.add(label);
              }
            });
    Set<Vec2> silent =
        left.stream().map(i -> ((PlanItem.Label) i).at()).collect(Collectors.toSet());
    return new PlanDrawing(
        title,
        items.stream().filter(i -> !left.contains(i)).filter(i -> !isLeader(i, silent)).toList());
  }

  private static boolean isLeader(PlanItem item, Set<Vec2> texts) {
    return item instanceof PlanItem.Arrow arrow
        && arrow.style().equals(PlanStyle.DIMENSION)
        && texts.contains(arrow.from());
  }
}
