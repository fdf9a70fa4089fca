package org.underlee.samples;

import static org.underlee.samples.Sizes.metric;

import java.util.ArrayList;
import java.util.List;

/**
 * A terrace on two levels in metres. The house corner is at the origin, its walls along −x and −y.
 * Above, the first field runs from the one wall to the outer edge and ends in a doubled joist; the
 * second, at a right angle, starts at the other wall and at that joist. Below, a field with fanned
 * joists on a retaining wall.
 */
final class HillsideTerrace {
  private static final double UPPER = 2900;
  private static final double LOWER = UPPER - 3 * 170; // three steps
  private static final double BOARD = 28;
  private static final double LEDGER = 45;
  private static final Section.Rectangle UPPER_JOIST = metric(45, 195);
  private static final Section.Rectangle LOWER_JOIST = metric(45, 170);
  private static final Section.Rectangle BEAM_PLY = metric(45, 220);
  private static final Section.Rectangle POST = metric(120, 120);
  private static final double WEST_RUN = 2450;
  private static final double EAST_RUN = 2000;
  private static final double LOWER_RUN = 2700;

  /** From the house corner to the outer face of the first field's rim. */
  private static final double OUTER = LEDGER + WEST_RUN + 45;

  /** The first field's left face; also that of the lower one. */
  private static final double LEFT = -4822.5;

  private static final double HALF_DOUBLE = 45;
  private static final int GARDEN = 0;

  private HillsideTerrace() {}

  static SampleDeck sample() {
    List<Member> members = new ArrayList<>();
    List<FieldPlan> upper = List.of(west(members), east(members));
    List<FieldPlan> lower = List.of(lower(members));
    return new SampleDeck(
        "hillside-terrace",
        "A terrace on two levels round a house corner in metres",
        List.of(
            new SampleDeck.Level("Garden", 0),
            new SampleDeck.Level("Lower terrace", LOWER + BOARD),
            new SampleDeck.Level("Upper terrace", UPPER + BOARD)),
        List.copyOf(members),
        List.of(upper, lower),
        Mix.PLAIN
            .with(Mix.Schema.IFC4X3_ADD2)
            .with(Mix.LengthUnit.METRE)
            .with(Mix.Body.MAPPED)
            .with(Mix.Classing.ASSEMBLY)
            .placed(-12.5, new Xyz(350, 220, 45), Mix.Where.SITE, Mix.Nesting.DEEP));
  }

  /** Lines every 400 mm to the doubled joist at the house corner. */
  private static FieldPlan west(List<Member> members) {
    FieldBuilder field =
        new FieldBuilder("west", new Xyz(0, LEDGER, 0), Xyz.Y, WEST_RUN, UPPER, members).on(2);
    for (int i = 0; i < 12; i++) {
      field.line(1, "45x195", UPPER_JOIST, -4800 + 400.0 * i);
    }
    field.line(2, "45x195", UPPER_JOIST, 0);
    field.ledger("45x195", UPPER_JOIST, LEFT, HALF_DOUBLE);
    field.rim("45x195", UPPER_JOIST, LEFT, HALF_DOUBLE);
    beamAndPosts(field, WEST_RUN, LEFT, HALF_DOUBLE, new double[] {-4600, -2300, -100});
    double axis = UPPER - 195 - 60 - 37.5; // 60 mm clear under the joists
    field.of("Polypropylene").pipeAcross("waste-pipe", 2, 8, 75, 900, axis);
    field.of("Larch");
    field.boards("28x140", metric(140, BOARD), 5, 5 - LEDGER, WEST_RUN + 45, LEFT, -2.5);
    field.of("Masonry").on(GARDEN);
    field.lying("wall", Role.WALL, "250", metric(250, 5600), -5500, 0, -LEDGER - 125, 2800);
    return field.plan();
  }

  /** Lines every 400 mm from the outer edge back along the house. */
  private static FieldPlan east(List<Member> members) {
    FieldBuilder field =
        new FieldBuilder("east", new Xyz(HALF_DOUBLE, 0, 0), Xyz.X, EAST_RUN, UPPER, members).on(2);
    double first = -OUTER + 22.5;
    double end = first + 16 * 400 + 22.5;
    for (int i = 0; i <= 16; i++) {
      field.line(1, "45x195", UPPER_JOIST, first + 400.0 * i);
    }
    field.ledger("45x195", UPPER_JOIST, 0, end);
    field.rim("45x195", UPPER_JOIST, -OUTER, end);
    beamAndPosts(field, EAST_RUN, -OUTER, end, new double[] {-2300, -300, 1700, 3700});
    double outside = EAST_RUN + 45;
    field.of("Larch");
    field.boards("28x140", metric(140, BOARD), 5, 2.5 - LEDGER, outside, -OUTER, end);
    for (int i = 0; i < 5; i++) {
      double u = -OUTER + 45 + 1580.0 * i;
      field.standing(
          "guard-" + i,
          Role.GUARD,
          "90x90",
          metric(90, 90),
          u,
          outside + 45,
          UPPER - 195,
          UPPER + BOARD + 1000);
    }
    field.of("Masonry").on(GARDEN);
    field.lying("wall", Role.WALL, "250", metric(250, 5600), 250, 5000, -LEDGER - 125, 2800);
    return field.plan();
  }

  /** Two plies under the joists, 300 mm back from the rim; the ground falls by 250 mm a post. */
  private static void beamAndPosts(
      FieldBuilder field, double run, double from, double to, double[] posts) {
    double near = run - 300 - 2 * BEAM_PLY.width();
    double top = UPPER - UPPER_JOIST.depth();
    field.dropBeam(2, "45x220", BEAM_PLY, near, from, to, top).on(GARDEN);
    double ground = 0;
    for (double u : posts) {
      double middle = near + BEAM_PLY.width();
      field.post("post-" + Math.round(u), "120x120", POST, u, middle, ground, top - 220);
      ground -= 250;
    }
    field.on(2);
  }

  /** Four bays of 400 mm, then five that open from 380 mm at the wall to 420 mm at the rim. */
  private static FieldPlan lower(List<Member> members) {
    FieldBuilder field =
        new FieldBuilder("lower", new Xyz(LEFT, OUTER, 0), Xyz.Y, LOWER_RUN, LOWER, members).on(1);
    for (int i = 0; i < 5; i++) {
      field.line(1, "45x170", LOWER_JOIST, 22.5 + 445.0 * i);
    }
    double high = 4 * 445 + 45; // last face so far
    double low = high;
    for (int i = 1; i <= 5; i++) {
      double alongU = 45 * StrictMath.hypot(1, i * 40 / LOWER_RUN);
      high += 380 + alongU;
      low += 420 + alongU;
      field.line(1, "45x170", LOWER_JOIST, high - alongU / 2, low - alongU / 2);
    }
    field.ledger("45x170", LOWER_JOIST, 0, high);
    field.rim("45x170", LOWER_JOIST, 0, low);
    for (double at : new double[] {900, 1800}) {
      for (int bay = 0; bay < field.bays(); bay++) {
        field.block(bay, "45x85", metric(45, 85), at, 0);
      }
    }
    lowerSupports(field, high);
    field.of("Larch").on(1);
    field.boards("28x140", metric(140, BOARD), 5, 5 - LEDGER, LOWER_RUN + 45, 0, high);
    steps(field);
    return field.plan();
  }

  private static void lowerSupports(FieldBuilder field, double width) {
    double near = 2210;
    double top = LOWER - LOWER_JOIST.depth();
    field.dropBeam(2, "45x220", BEAM_PLY, near, 0, width, top).on(GARDEN);
    for (double u : new double[] {200, width / 2, width - 200}) {
      field.post("post-" + Math.round(u), "120x120", POST, u, near + 45, -600, top - 220);
    }
    double bottom = -800;
    field.of("Concrete");
    field.lying(
        "wall",
        Role.WALL,
        "200",
        metric(200, LOWER - bottom),
        0,
        width,
        -LEDGER - 100,
        (LOWER + bottom) / 2);
  }

  /** Two treads make three risers of 170 mm. */
  private static void steps(FieldBuilder field) {
    for (int i = 1; i <= 2; i++) {
      double z = UPPER + BOARD - 170 * i - 20;
      field.lying("step-" + i, Role.TREAD, "300x40", metric(300, 40), 1300, 2500, 300 * i - 150, z);
    }
  }
}
