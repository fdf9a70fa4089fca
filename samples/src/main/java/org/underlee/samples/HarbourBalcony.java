package org.underlee.samples;

import static org.underlee.samples.Sizes.metric;

import java.util.ArrayList;
import java.util.List;

/** A steel and wood balcony in millimetres, turned and far from the origin. */
final class HarbourBalcony {
  private static final Section.Rectangle JOIST = metric(60, 160);
  private static final Section.Rectangle LEDGER = metric(70, 180);
  private static final Section.IShape BEAM = new Section.IShape(91, 180, 5.3, 8);

  /** From the ledger's face to the tips of the beam's flanges. */
  private static final double RUN = 1600;

  private static final int LINES = 9;
  private static final double SPACING = 500;
  private static final double WIDTH = (LINES - 1) * SPACING + 60;
  private static final double FLOOR = 3150;
  private static final double JOIST_TOP = FLOOR - 28;
  private static final String STEEL = "Galvanised steel";

  private HarbourBalcony() {}

  static SampleDeck sample() {
    List<Member> members = new ArrayList<>();
    FieldBuilder field = new FieldBuilder("field", Xyz.ORIGIN, Xyz.Y, RUN, JOIST_TOP, members);
    for (int i = 0; i < LINES; i++) {
      field.line(1, "60x160", JOIST, 30 + SPACING * i);
    }
    field.of(STEEL);
    field.ledger("180x70", LEDGER, 0, WIDTH);
    field.flushBeam("I 180", BEAM, 0, WIDTH);
    posts(field);
    field.of("Polypropylene");
    field.standingPipe("rain-pipe", 2, 110, 400, 220, -300, 5800);
    field.pipeAlong("conduit", 5, 40, 50, 1550, 100, JOIST_TOP - 45);
    field.of("Larch");
    field.boards("28x145", metric(145, 28), 5, -65, RUN + BEAM.width(), 0, WIDTH);
    field.of("Concrete").on(0);
    field.lying("wall", Role.WALL, "300", metric(300, 6000), -1500, 5500, -70 - 150, 3000);
    return new SampleDeck(
        "harbour-balcony",
        "A steel and wood balcony in millimetres",
        List.of(new SampleDeck.Level("Quay", 0), new SampleDeck.Level("Balcony", FLOOR)),
        List.copyOf(members),
        List.of(List.of(field.plan())),
        Mix.PLAIN
            .with(Mix.Schema.IFC2X3)
            .with(Mix.Naming.GERMAN)
            .placed(
                27.3, new Xyz(4200, 1700, 0), Mix.Where.SITE_AND_BUILDING, Mix.Nesting.ELEMENT));
  }

  private static void posts(FieldBuilder field) {
    double v = RUN + BEAM.width() / 2;
    double outside = RUN + BEAM.width() + 25;
    field.on(0);
    for (double u : new double[] {150, WIDTH / 2, WIDTH - 150}) {
      field.post("post-" + Math.round(u), "100x100", metric(100, 100), u, v, 0, JOIST_TOP - 180);
    }
    field.on(1);
    for (double u : new double[] {25, WIDTH / 2, WIDTH - 25}) {
      field.standing(
          "guard-" + Math.round(u),
          Role.GUARD,
          "50x50",
          metric(50, 50),
          u,
          outside,
          JOIST_TOP - 160,
          FLOOR + 1060);
    }
    field.lying("guard-rail", Role.GUARD, "50x40", metric(50, 40), 0, WIDTH, outside, FLOOR + 1080);
  }
}
