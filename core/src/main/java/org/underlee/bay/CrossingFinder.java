package org.underlee.bay;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Field;
import org.underlee.geom.BarMeasure;
import org.underlee.geom.Box;
import org.underlee.geom.Interval;
import org.underlee.geom.OrientedBox;
import org.underlee.geom.Vec3;

/** Finds what enters the space of bays: anything with a body that is not framing, of any class. */
public final class CrossingFinder {
  /** A bar is through when it is steeper than this (sine of 45°). */
  private static final double STEEP = 0.7071;

  /** A body longer than this many times its thickness has a direction. */
  private static final double SLENDER = 1.5;

  private record Indexed(int order, BuildingElement element, Box bounds) {}

  private final STRtree tree = new STRtree();

  /**
   * @param elements everything with a body
   * @param framing instance numbers of what is framing, boards or posts, and so no crossing
   */
  public CrossingFinder(List<BuildingElement> elements, Set<Long> framing) {
    for (int i = 0; i < elements.size(); i++) {
      BuildingElement element = elements.get(i);
      if (!framing.contains(element.instance()) && !element.shape().isEmpty()) {
        Box box = element.shape().bounds();
        tree.insert(envelope(box), new Indexed(i, element, box));
      }
    }
    tree.build();
  }

  List<Crossing> in(Field field, Bay bay) {
    BaySpace space = new BaySpace(bay);
    Box world = space.worldBounds(field.frame());
    List<Indexed> near = new ArrayList<>();
    for (Object hit : tree.query(envelope(world))) {
      Indexed indexed = (Indexed) hit;
      if (indexed.bounds.meets(world)) {
        near.add(indexed);
      }
    }
    near.sort(Comparator.comparingInt(Indexed::order));
    List<Crossing> found = new ArrayList<>();
    for (Indexed indexed : near) {
      Box inside = space.inside(indexed.element.shape(), field.frame());
      if (!inside.isEmpty()) {
        found.add(crossing(indexed.element, inside, field, bay));
      }
    }
    found.sort(Comparator.comparingDouble(Crossing::at).thenComparing(c -> c.element().globalId()));
    return found;
  }

  private static Crossing crossing(BuildingElement element, Box inside, Field field, Bay bay) {
    Optional<OrientedBox> bar = BarMeasure.of(element.shape());
    Vec3 size = inside.size();
    Way way =
        bar.filter(CrossingFinder::hasDirection)
            .map(b -> way(field.frame().directionToLocal(b.axis())))
            .orElseGet(() -> size.z() >= bay.depth() ? Way.THROUGH : Way.ACROSS);
    Vec3 centre = inside.centre();
    return new Crossing(
        element,
        way,
        bar.filter(CrossingFinder::hasDirection)
            .map(b -> thickness(element, b))
            .orElseGet(() -> Math.max(size.x(), size.y())),
        bar.filter(b -> hasDirection(b) && isRound(element, b)).isPresent(),
        centre.y() - bay.stretch().from(),
        centre.x() - bay.left().rightAt(centre.y()),
        new Interval(inside.min().y(), inside.max().y()),
        new Interval(inside.min().x(), inside.max().x()),
        new Interval(inside.min().z(), inside.max().z()));
  }

  private static boolean hasDirection(OrientedBox b) {
    return b.length() >= SLENDER * Math.max(b.width(), b.depth());
  }

  private static Way way(Vec3 axis) {
    if (Math.abs(axis.z()) >= STEEP) {
      return Way.THROUGH;
    }
    return Math.abs(axis.y()) >= Math.abs(axis.x()) ? Way.ALONG : Way.ACROSS;
  }

  private static boolean isRound(BuildingElement element, OrientedBox bar) {
    return BarMeasure.isRound(element.shape(), bar);
  }

  /**
   * A round bar's diameter comes from its section, as its facets may lie inside the circle or on
   * it.
   */
  private static double thickness(BuildingElement element, OrientedBox bar) {
    return isRound(element, bar)
        ? Math.sqrt(4 * BarMeasure.sectionArea(element.shape(), bar) / Math.PI)
        : Math.max(bar.width(), bar.depth());
  }

  private static Envelope envelope(Box box) {
    return new Envelope(box.min().x(), box.max().x(), box.min().y(), box.max().y());
  }
}
