package org.underlee.bay;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.framing.Role;
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

  /** What fills this much of a bay's width runs from joist to joist. */
  private static final double REACHES = 0.9;

  /**
   * A post bolted to a beam's side may end this far above the beam, between the joists' bottoms.
   */
  private static final double BESIDE_BEAM = 0.005;

  private record Indexed(int order, BuildingElement element, Box bounds, boolean post) {}

  private final STRtree tree = new STRtree();
  private int count;

  /**
   * @param elements everything with a body in the model that has the framing
   * @param framing no crossings; but its posts are where they rise between the joists
   * @param services elements of other models
   */
  public CrossingFinder(
      List<BuildingElement> elements, Framing framing, List<BuildingElement> services) {
    Set<Long> posts = instances(framing, Role::isUpright);
    Set<Long> others = instances(framing, role -> !role.isUpright());
    elements.stream()
        .filter(e -> !others.contains(e.instance()))
        .forEach(e -> add(e, posts.contains(e.instance())));
    services.forEach(e -> add(e, false));
    tree.build();
  }

  private void add(BuildingElement element, boolean post) {
    if (!element.shape().isEmpty()) {
      Box box = element.shape().bounds();
      tree.insert(envelope(box), new Indexed(count++, element, box, post));
    }
  }

  /** By number in the file, as a model may hold a GlobalId twice. */
  private static Set<Long> instances(Framing framing, Predicate<Role> which) {
    return framing.roles().stream()
        .filter(r -> which.test(r.role()))
        .map(r -> r.member().element().instance())
        .collect(Collectors.toUnmodifiableSet());
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
      if (!inside.isEmpty() && !(indexed.post && isBelow(inside, bay))) {
        found.add(crossing(indexed.element, inside, field, bay));
      }
    }
    List<Crossing> joined = new ArrayList<>(Insulation.joined(found));
    joined.sort(
        Comparator.comparingDouble(Crossing::at).thenComparing(c -> c.element().globalId()));
    return joined;
  }

  private static boolean isBelow(Box inside, Bay bay) {
    return inside.max().z() <= bay.joistBottom(inside.centre().y()) + BESIDE_BEAM;
  }

  private static Crossing crossing(BuildingElement element, Box inside, Field field, Bay bay) {
    Optional<OrientedBox> bar = BarMeasure.of(element.shape());
    Vec3 size = inside.size();
    Way way =
        bar.filter(CrossingFinder::hasDirection)
            .map(b -> way(field.frame().directionToLocal(b.axis())))
            .orElseGet(() -> way(size, bay, inside.centre().y()));
    Vec3 centre = inside.centre();
    return new Crossing(
        element,
        Optional.empty(),
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

  /** Of what has no direction of its own: from the faces of the bay that it reaches. */
  private static Way way(Vec3 size, Bay bay, double station) {
    if (size.x() >= REACHES * bay.clearWidthAt(station)) {
      return Way.ACROSS;
    }
    if (size.z() >= bay.depth()) {
      return Way.THROUGH;
    }
    return size.y() >= size.x() ? Way.ALONG : Way.ACROSS;
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
