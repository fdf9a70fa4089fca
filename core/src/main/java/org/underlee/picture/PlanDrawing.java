package org.underlee.picture;

import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.geom.Vec2;

/**
 * A plan as a vector drawing; later items lie over earlier ones. Built by {@link PlanBuilder};
 * written by {@link Svg} and {@link PlanRaster}.
 */
public record PlanDrawing(String title, List<PlanItem> items) implements ScaledDrawing {
  public PlanDrawing {
    items = List.copyOf(items);
  }

  /** The same at every scale. */
  @Override
  public PlanDrawing at(double denominator) {
    return this;
  }

  /**
   * The same with those texts for which there is room on a sheet, so that none lies on another or
   * on the arrow of a fall: names on plates come first, then the first in order. The line from a
   * text that is left out to what it speaks of is left out too. For a screen, which a person can
   * bring nearer; on paper each text must be there.
   */
  public PlanDrawing legibleOn(PlanSheet sheet) {
    Room room = new Room(PlanSheet.metresPerMm(sheet.denominator()));
    Set<PlanItem> left = Collections.newSetFromMap(new IdentityHashMap<>());
    items.stream()
        .filter(i -> i instanceof PlanItem.Label || i.style().equals(PlanStyle.FALL))
        .sorted(Comparator.comparing(PlanDrawing::rank))
        .forEach(
            item -> {
              if (!(item instanceof PlanItem.Label) || room.isFree(item)) {
                room.take(item);
              } else {
                left.add(item);
              }
            });
    Set<Vec2> silent =
        left.stream().map(i -> ((PlanItem.Label) i).at()).collect(Collectors.toSet());
    return new PlanDrawing(
        title,
        items.stream().filter(i -> !left.contains(i)).filter(i -> !isLeader(i, silent)).toList());
  }

  /** Names on plates come first, and arrows before other texts. */
  private static int rank(PlanItem item) {
    boolean isText = item instanceof PlanItem.Label;
    return isText && item.style().fill().isPresent() ? 0 : isText ? 2 : 1;
  }

  private static boolean isLeader(PlanItem item, Set<Vec2> texts) {
    return item instanceof PlanItem.Arrow arrow
        && arrow.style().equals(PlanStyle.DIMENSION)
        && texts.contains(arrow.from());
  }
}
