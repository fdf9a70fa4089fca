package org.underlee.ifc.shape;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.underlee.finding.InputException;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.step.Glance;
import org.underlee.step.StepFile;

/**
 * What {@link Reach} tells, to the last bit, without decoding a single instance: most elements of a
 * building are nowhere near a deck, and this is all that is ever read of them. Where it is unsure,
 * {@code Reach} has to be asked. For one thread.
 */
public final class QuickReach {
  /** Most numbers in a point or a direction. */
  private static final int SPACE = 3;

  /** The box of a mapped representation, and the inverse of the frame that it is given in. */
  private record Mapped(Box box, Transform inverse) {}

  private final StepFile step;
  private final Glance glance;
  private final Map<Long, Mapped> maps = new HashMap<>();

  /** Few, and each used again and again. */
  private final Map<Long, Transform> operators = new HashMap<>();

  private final double[] numbers = new double[SPACE];

  public QuickReach(StepFile step, Glance glance) {
    this.step = step;
    this.glance = glance;
  }

  /**
   * A box, in file units, that surely holds a representation.
   *
   * @throws Glance.Unsure when it cannot be told
   */
  public Box of(long representation) {
    return of(representation, 0);
  }

  private Box of(long representation, int depth) {
    glance.to(representation);
    glance.skip(3);
    long[] items = glance.refs();
    glance.rest();
    Box all = Box.EMPTY;
    for (long item : items) {
      all = all.union(item(item, depth));
    }
    if (all.isEmpty()) {
      throw Glance.unsure();
    }
    return all;
  }

  private Box item(long item, int depth) {
    if (depth == Reach.DEEPEST) {
      throw Glance.unsure();
    }
    return switch (glance.to(item)) {
      case "IFCEXTRUDEDAREASOLID" -> swept();
      case "IFCMAPPEDITEM" -> mapped(depth);
      case "IFCFACETEDBREP" -> faceted(nextRef());
      case "IFCBOOLEANCLIPPINGRESULT" -> item(firstOperand(), depth + 1);
      case "IFCTRIANGULATEDFACESET", "IFCPOLYGONALFACESET" -> points(nextRef());
      default -> throw Glance.unsure();
    };
  }

  private long nextRef() {
    long id = glance.ref();
    glance.rest();
    return id;
  }

  private long firstOperand() {
    glance.skip(1);
    return nextRef();
  }

  private Box swept() {
    long profile = glance.ref();
    long position = glance.optionalRef();
    long direction = glance.ref();
    double depth = glance.number();
    glance.rest();
    Box section = section(profile);
    Vec3 way = direction(direction).times(depth);
    Box swept = section.union(new Box(section.min().plus(way), section.max().plus(way)));
    return swept.moved(optionalPlacement(position));
  }

  private Box section(long profile) {
    String keyword = glance.to(profile);
    glance.skip(2);
    long position = glance.optionalRef();
    double x;
    double y;
    if (Reach.BOXED_PROFILES.contains(keyword)) {
      x = glance.number() / 2;
      y = glance.number() / 2;
    } else if (Reach.ROUND_PROFILES.contains(keyword)) {
      x = glance.number() * Reach.PAST_CIRCLE;
      y = x;
    } else {
      throw Glance.unsure();
    }
    glance.rest();
    Vec3 half = new Vec3(x, y, 0);
    return new Box(half.negated(), half).moved(optionalPlacement(position));
  }

  private Box faceted(long shell) {
    glance.to(shell);
    long[] faces = glance.refs();
    glance.rest();
    Around around = new Around();
    for (long face : faces) {
      glance.to(face);
      long[] bounds = glance.refs();
      glance.rest();
      for (long bound : bounds) {
        glance.to(bound);
        loop(nextRef(), around);
      }
    }
    return around.box();
  }

  private void loop(long loop, Around around) {
    if (!glance.to(loop).equals("IFCPOLYLOOP")) {
      throw Glance.unsure();
    }
    long[] corners = glance.refs();
    glance.rest();
    for (long corner : corners) {
      if (!glance.to(corner).equals("IFCCARTESIANPOINT")) {
        throw Glance.unsure();
      }
      vector();
      around.add(numbers);
    }
  }

  private Box mapped(int depth) {
    long map = glance.ref();
    long target = glance.ref();
    glance.rest();
    Mapped source = maps.get(map);
    if (source == null) {
      glance.to(map);
      long origin = glance.ref();
      long representation = glance.ref();
      glance.rest();
      source = new Mapped(of(representation, depth + 1), inverse(placement(origin)));
      maps.put(map, source);
    }
    return source.box.moved(operator(target).after(source.inverse));
  }

  private static Transform inverse(Transform map) {
    try {
      return map.inverse();
    } catch (ArithmeticException e) {
      throw Glance.unsure();
    }
  }

  private Transform operator(long id) {
    Transform known = operators.get(id);
    if (known == null) {
      try {
        known = Axes.operator(step.instance(id));
      } catch (InputException | ArithmeticException e) {
        throw Glance.unsure();
      }
      operators.put(id, known);
    }
    return known;
  }

  private Box points(long list) {
    glance.to(list);
    Around around = new Around();
    glance.enter();
    while (glance.more()) {
      if (glance.numbers(numbers) != SPACE) {
        throw Glance.unsure();
      }
      around.add(numbers);
    }
    glance.rest();
    return around.box();
  }

  /** The frame of an axis placement with this number. */
  public Transform placement(long id) {
    String keyword = glance.to(id);
    long origin = glance.ref();
    long first = glance.optionalRef();
    Vec3 z = Vec3.Z;
    Vec3 x;
    if (keyword.equals("IFCAXIS2PLACEMENT3D")) {
      long second = glance.optionalRef();
      glance.rest();
      z = first == 0 ? Vec3.Z : given(first, Vec3.Z);
      x = second == 0 ? Axes.anyX(z) : given(second, Axes.anyX(z));
    } else if (keyword.equals("IFCAXIS2PLACEMENT2D")) {
      glance.rest();
      x = first == 0 ? Vec3.X : given(first, Vec3.X).horizontal();
    } else {
      throw Glance.unsure();
    }
    if (z.cross(x).length() <= Axes.PARALLEL) {
      throw Glance.unsure();
    }
    return Transform.frame(point(origin), z, x);
  }

  private Transform optionalPlacement(long id) {
    return id == 0 ? Transform.IDENTITY : placement(id);
  }

  private Vec3 given(long direction, Vec3 otherwise) {
    glance.to(direction);
    Vec3 d = vector();
    double length = d.length();
    return length > 0 ? d.times(1 / length) : otherwise;
  }

  private Vec3 direction(long id) {
    glance.to(id);
    Vec3 d = vector();
    double length = d.length();
    if (!(length > 0)) {
      throw Glance.unsure();
    }
    return d.times(1 / length);
  }

  private Vec3 point(long id) {
    if (!glance.to(id).equals("IFCCARTESIANPOINT")) {
      throw Glance.unsure();
    }
    return vector();
  }

  private Vec3 vector() {
    int count = glance.numbers(numbers);
    glance.rest();
    if (count < 2) {
      throw Glance.unsure();
    }
    if (count == 2) {
      numbers[2] = 0;
    }
    return new Vec3(numbers[0], numbers[1], numbers[2]);
  }

  /** A box that grows. */
  private static final class Around {
    private final double[] low = new double[SPACE];
    private final double[] high = new double[SPACE];

    Around() {
      Arrays.fill(low, Double.POSITIVE_INFINITY);
      Arrays.fill(high, Double.NEGATIVE_INFINITY);
    }

    void add(double[] p) {
      for (int axis = 0; axis < SPACE; axis++) {
        low[axis] = Math.min(low[axis], p[axis]);
        high[axis] = Math.max(high[axis], p[axis]);
      }
    }

    Box box() {
      return new Box(new Vec3(low[0], low[1], low[2]), new Vec3(high[0], high[1], high[2]));
    }
  }
}
