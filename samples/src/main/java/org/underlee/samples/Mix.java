package org.underlee.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * One way of writing a sample down.
 *
 * @param yawDegrees turn of the sample in the world, counter-clockwise seen from above
 * @param offsetMetres where the sample's origin is in the world
 * @param seed of the shuffle
 * @param crlf whether lines end with CR LF
 */
public record Mix(
    Schema schema,
    LengthUnit unit,
    double yawDegrees,
    Xyz offsetMetres,
    Where where,
    Nesting nesting,
    Body body,
    Classing classing,
    Naming naming,
    Order order,
    long seed,
    boolean crlf) {

  /** Edition of the standard. */
  public enum Schema {
    IFC2X3,
    IFC4,
    IFC4X3_ADD2;

    public boolean isOld() {
      return this == IFC2X3;
    }
  }

  /** Unit of every length in the file. */
  public enum LengthUnit {
    MILLIMETRE(1),
    METRE(1000),
    FOOT(304.8),
    INCH(25.4),
    /** 1200/3937 m; two parts in a million more than the international foot. */
    US_SURVEY_FOOT(1_200_000.0 / 3937);

    private final double millimetres;

    LengthUnit(double millimetres) {
      this.millimetres = millimetres;
    }

    public double millimetres() {
      return millimetres;
    }
  }

  /** Which placement carries the turn and the offset. */
  public enum Where {
    SITE,
    /** The offset in the site, the turn in the building. */
    SITE_AND_BUILDING,
    /** None: site, building and storeys are at the origin, the elements are far off. */
    ELEMENTS
  }

  /** How an element is placed. */
  public enum Nesting {
    /** Its own placement in its storey (or assembly) along its axis; its shape at the origin. */
    ELEMENT,
    /** At its storey's origin; its shape says where it is. */
    SHAPE,
    /** One more turned placement in between, and the shape turned in the element. */
    DEEP,
    /** Relative to nothing. */
    ABSOLUTE
  }

  /** What the body is. */
  public enum Body {
    /** A parametric profile along the member's axis. */
    PROFILE,
    /** An arbitrary closed profile along the member's axis. */
    POLYLINE,
    /** The side view carried across the width. */
    SIDE_VIEW,
    /** A mapped item of a shared type. */
    MAPPED,
    BREP,
    /** IFC4 and later; a brep before. */
    TRIANGLES,
    /** IFC4 and later; a brep before. */
    POLYGONS,
    /** Too long, and cut at both ends by half-spaces. */
    CLIPPED
  }

  /** Which classes the framing has. */
  public enum Classing {
    /** Beams, joists among them by their predefined type. */
    BEAM,
    MEMBER,
    PROXY,
    /** As {@link #BEAM}, each field's framing being the parts of an assembly. */
    ASSEMBLY
  }

  /** What the elements are called. */
  public enum Naming {
    ENGLISH,
    NONE,
    GERMAN
  }

  /** Of the instances in the file. */
  public enum Order {
    FORWARD,
    /** Every reference points to a later line. */
    BACKWARD,
    /** Lines and numbers shuffled, with gaps in the numbers. */
    SHUFFLED
  }

  /** Metric IFC4, unturned, at the origin, one placement per element, parametric profiles. */
  public static final Mix PLAIN =
      new Mix(
          Schema.IFC4,
          LengthUnit.MILLIMETRE,
          0,
          Xyz.ORIGIN,
          Where.SITE,
          Nesting.ELEMENT,
          Body.PROFILE,
          Classing.BEAM,
          Naming.ENGLISH,
          Order.FORWARD,
          0,
          false);

  /** What a file can hold: a tessellation in IFC2X3 becomes a brep. */
  public Mix {
    if (schema.isOld() && (body == Body.TRIANGLES || body == Body.POLYGONS)) {
      body = Body.BREP;
    }
  }

  public Mix with(Schema s) {
    return new Mix(
        s,
        unit,
        yawDegrees,
        offsetMetres,
        where,
        nesting,
        body,
        classing,
        naming,
        order,
        seed,
        crlf);
  }

  public Mix with(LengthUnit u) {
    return new Mix(
        schema,
        u,
        yawDegrees,
        offsetMetres,
        where,
        nesting,
        body,
        classing,
        naming,
        order,
        seed,
        crlf);
  }

  public Mix with(Body b) {
    return new Mix(
        schema,
        unit,
        yawDegrees,
        offsetMetres,
        where,
        nesting,
        b,
        classing,
        naming,
        order,
        seed,
        crlf);
  }

  public Mix with(Classing c) {
    return new Mix(
        schema, unit, yawDegrees, offsetMetres, where, nesting, body, c, naming, order, seed, crlf);
  }

  public Mix with(Naming n) {
    return new Mix(
        schema,
        unit,
        yawDegrees,
        offsetMetres,
        where,
        nesting,
        body,
        classing,
        n,
        order,
        seed,
        crlf);
  }

  public Mix with(Order o, long shuffle) {
    return new Mix(
        schema,
        unit,
        yawDegrees,
        offsetMetres,
        where,
        nesting,
        body,
        classing,
        naming,
        o,
        shuffle,
        crlf);
  }

  public Mix placed(double yaw, Xyz metres, Where at, Nesting how) {
    return new Mix(schema, unit, yaw, metres, at, how, body, classing, naming, order, seed, crlf);
  }

  public Mix withCrlf() {
    return new Mix(
        schema,
        unit,
        yawDegrees,
        offsetMetres,
        where,
        nesting,
        body,
        classing,
        naming,
        order,
        seed,
        true);
  }

  /** Any mix; up to 100 km off. The same for the same seed. */
  public static Mix random(long seed) {
    Random random = new Random(seed);
    double reach = random.nextInt(3) * 50_000.0;
    Xyz offset = new Xyz(reach * signed(random), reach * signed(random), 100 * random.nextInt(3));
    return new Mix(
        pick(Schema.values(), random),
        pick(LengthUnit.values(), random),
        random.nextInt(4) == 0 ? 90 * random.nextInt(4) : 360 * random.nextDouble(),
        offset,
        pick(Where.values(), random),
        pick(Nesting.values(), random),
        pick(Body.values(), random),
        pick(Classing.values(), random),
        pick(Naming.values(), random),
        pick(Order.values(), random),
        seed,
        random.nextInt(8) == 0);
  }

  private static double signed(Random random) {
    return 2 * random.nextDouble() - 1;
  }

  private static <T> T pick(T[] values, Random random) {
    return values[random.nextInt(values.length)];
  }

  /** Every schema with every body it can hold, twice, the other options taking turns. */
  public static List<Mix> grid() {
    List<Mix> grid = new ArrayList<>();
    for (int round = 0; round < 2; round++) {
      for (Schema schema : Schema.values()) {
        for (Body body : Body.values()) {
          Mix mix = turn(grid.size() + round, schema, body);
          if (mix.body == body) {
            grid.add(mix);
          }
        }
      }
    }
    return List.copyOf(grid);
  }

  /** Steps through the options at different paces, so that they meet in many ways. */
  private static Mix turn(int i, Schema schema, Body body) {
    double[] kilometres = {0, 0.35, 12, 100};
    Xyz offset = new Xyz(kilometres[i % 4] * 1000, -kilometres[(i / 2) % 4] * 700, i % 3 * 50.0);
    return PLAIN
        .with(schema)
        .with(body)
        .with(LengthUnit.values()[i % 5])
        .with(Classing.values()[(i / 3) % 4])
        .with(Naming.values()[(i / 2) % 3])
        .with(Order.values()[i % 3], i)
        .placed(i * 37.3 % 360, offset, Where.values()[(i / 4) % 3], Nesting.values()[(i / 5) % 4]);
  }
}
