package org.underlee.ifc.shape;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.underlee.finding.InputException;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.step.StepInstance;

/**
 * How far a representation reaches, without its solid: a box, in file units, that surely holds it.
 * Told for what most models are mostly made of (sweeps of common profiles, triangles from a list of
 * points, mapped items and what is cut out of these); anything else must be read to know.
 */
public final class Reach {
  /** Items in items deeper than this are left to the reader, who says what is wrong. */
  private static final int DEEPEST = 8;

  /** Profiles whose attributes 3 and 4 are their whole width and depth. */
  private static final Set<String> BOXED_PROFILES =
      Set.of(
          "IFCRECTANGLEPROFILEDEF",
          "IFCROUNDEDRECTANGLEPROFILEDEF",
          "IFCRECTANGLEHOLLOWPROFILEDEF");

  private static final Set<String> ROUND_PROFILES =
      Set.of("IFCCIRCLEPROFILEDEF", "IFCCIRCLEHOLLOWPROFILEDEF");

  /** A polygon that stands for a circle may reach past it by less than this share. */
  private static final double PAST_CIRCLE = 1.01;

  private final Map<Long, Optional<Box>> maps = new HashMap<>();

  /** Empty when it cannot be told, or when something is wrong with the representation. */
  public Optional<Box> of(StepInstance representation) {
    try {
      return of(representation, 0);
    } catch (InputException | IllegalArgumentException | ArithmeticException e) {
      // Whoever reads the solid meets the fault again, and says what it is.
      return Optional.empty();
    }
  }

  private Optional<Box> of(StepInstance representation, int depth) {
    Box all = Box.EMPTY;
    for (StepInstance item : representation.followAll(3)) {
      Optional<Box> box = item(item, depth);
      if (box.isEmpty()) {
        return box;
      }
      all = all.union(box.get());
    }
    return all.isEmpty() ? Optional.empty() : Optional.of(all);
  }

  private Optional<Box> item(StepInstance item, int depth) {
    if (depth == DEEPEST) {
      return Optional.empty();
    }
    return switch (item.keyword()) {
      case "IFCEXTRUDEDAREASOLID" -> swept(item);
      case "IFCMAPPEDITEM" -> mapped(item, depth);
      case "IFCFACETEDBREP" -> faceted(item.follow(0));
      case "IFCBOOLEANCLIPPINGRESULT" -> item(item.follow(1), depth + 1);
      case "IFCTRIANGULATEDFACESET", "IFCPOLYGONALFACESET" -> points(item.follow(0));
      default -> Optional.empty();
    };
  }

  private static Optional<Box> swept(StepInstance solid) {
    StepInstance profile = solid.follow(0);
    double x;
    double y;
    if (BOXED_PROFILES.contains(profile.keyword())) {
      x = profile.number(3) / 2;
      y = profile.number(4) / 2;
    } else if (ROUND_PROFILES.contains(profile.keyword())) {
      x = profile.number(3) * PAST_CIRCLE;
      y = x;
    } else {
      return Optional.empty();
    }
    Vec3 half = new Vec3(x, y, 0);
    Box section = new Box(half.negated(), half).surelyMoved(Axes.optionalPlacement(profile, 2));
    Vec3 way = Axes.direction(solid.follow(2)).times(solid.number(3));
    Box swept = section.union(new Box(section.min().plus(way), section.max().plus(way)));
    return Optional.of(swept.surelyMoved(Axes.optionalPlacement(solid, 1)));
  }

  /** Around the corners of all its faces; each is looked up once, though several faces share it. */
  private static Optional<Box> faceted(StepInstance shell) {
    Set<Long> seen = new HashSet<>();
    Box box = Box.EMPTY;
    for (StepInstance face : shell.followAll(0)) {
      for (StepInstance bound : face.followAll(0)) {
        StepInstance loop = bound.follow(0);
        if (!loop.keyword().equals("IFCPOLYLOOP")) {
          return Optional.empty();
        }
        for (long corner : loop.refs(0)) {
          if (seen.add(corner)) {
            box = box.with(Axes.point(loop.resolve(corner)));
          }
        }
      }
    }
    return Optional.of(box);
  }

  private Optional<Box> mapped(StepInstance item, int depth) {
    StepInstance map = item.follow(0);
    Optional<Box> source = maps.get(map.id());
    if (source == null) {
      source = of(map.follow(1), depth + 1);
      maps.put(map.id(), source);
    }
    Transform origin = Axes.placement(map.follow(0));
    Transform target = Axes.operator(item.follow(1));
    Transform place = target.after(origin.inverse());
    return source.map(box -> box.surelyMoved(place));
  }

  private static Optional<Box> points(StepInstance list) {
    Box box = Box.EMPTY;
    for (double[] p : list.numberRows(0)) {
      if (p.length != 3) {
        return Optional.empty();
      }
      box = box.with(new Vec3(p[0], p[1], p[2]));
    }
    return Optional.of(box);
  }
}
