package org.underlee.samples;

import static org.underlee.samples.Sizes.metric;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** One small deck for each kind of difficulty that real framing has, in metric sizes. */
public final class HardCases {
  private static final String JOIST_SIZE = "45x195";
  private static final Section.Rectangle JOIST = metric(45, 195);
  private static final Section.Rectangle BEAM_PLY = metric(45, 220);
  private static final Section.Rectangle POST = metric(90, 90);
  private static final double JOIST_TOP = 2800;
  private static final double JOIST_BOTTOM = JOIST_TOP - JOIST.depth();
  private static final double SPACING = 450;
  private static final double RUN = 2600;

  private static final String PANS = "formed-aluminium";
  private static final String MEMBRANE = "membrane-drape";
  private static final String SHEETS = "ribbed-sheet";

  private HardCases() {}

  /** Every case, in the order of the samples' page. */
  public static List<HardCase> all() {
    return List.of(
        new HardCase(blocking(), PANS, false),
        new HardCase(pipe(), PANS, false),
        new HardCase(conduit(), PANS, false),
        new HardCase(beam(), PANS, false),
        new HardCase(plies(), PANS, false),
        new HardCase(longRun(), PANS, false),
        new HardCase(standsFree(), PANS, false).fallingBothWays("deck-1/field-1"),
        new HardCase(fullBays(), SHEETS, false),
        new HardCase(openTops(), MEMBRANE, true));
  }

  /** Blocking that hangs below the joists at mid-span of every second bay. */
  private static SampleDeck blocking() {
    return deck(
        "low-blocking",
        "Blocking that hangs below the joist bottoms",
        RUN,
        new int[] {1, 1, 1, 1, 1},
        field -> {
          for (int bay = 0; bay < field.bays(); bay += 2) {
            field.block(bay, JOIST_SIZE, JOIST, RUN / 2, 18);
          }
        });
  }

  private static SampleDeck pipe() {
    return deck(
        "pipe-through-a-bay",
        "A drain pipe that stands in one bay",
        RUN,
        new int[] {1, 1, 1, 1},
        field ->
            field
                .of("Polypropylene")
                .standingPipe("drain", 1, 75, 900, 200, -200, JOIST_TOP + 150));
  }

  /** So low that a leg beside it must be notched, and so near to one joist that only one is. */
  private static SampleDeck conduit() {
    return deck(
        "pipe-at-edge",
        "A conduit along one bay, near to one of its joists",
        RUN,
        new int[] {1, 1, 1, 1},
        field ->
            field
                .of("Polypropylene")
                .pipeAlong("conduit", 1, 50, 300, RUN - 300, 45, JOIST_BOTTOM + 85));
  }

  /** Pans that pass under the full-depth blocking are too low to pass over the beam. */
  private static SampleDeck beam() {
    double face = 3200;
    return deck(
        "beam-in-the-fall",
        "A drop beam that takes the fall",
        3900,
        new int[] {1, 1, 1, 1},
        field -> {
          for (int bay = 0; bay < field.bays(); bay++) {
            field.block(bay, JOIST_SIZE, JOIST, face / 2, 0);
          }
          double over = JOIST.width() / 2;
          field.dropBeam(2, "45x220", BEAM_PLY, face, -over, 3 * SPACING + over, JOIST_BOTTOM);
        });
  }

  private static SampleDeck plies() {
    return deck(
        "doubled-joists",
        "A doubled and a tripled joist line",
        RUN,
        new int[] {1, 2, 1, 3, 1},
        field -> {});
  }

  /**
   * So long that rails which pass under the blocking of the middle bay have no joist beside them at
   * the low end.
   */
  private static SampleDeck longRun() {
    return deck(
        "run-too-long",
        "A run longer than the fall allows",
        5600,
        new int[] {1, 1, 1, 1},
        field -> field.block(1, JOIST_SIZE, JOIST, 1000, 0));
  }

  /** As the run that is too long, but at no house: from the middle there is height enough. */
  private static SampleDeck standsFree() {
    List<Member> members = new ArrayList<>();
    double run = 5600;
    FieldBuilder field = new FieldBuilder("field", Xyz.ORIGIN, Xyz.Y, run, JOIST_TOP, members);
    for (int i = 0; i < 4; i++) {
      field.line(1, JOIST_SIZE, JOIST, SPACING * i);
    }
    double from = -JOIST.width() / 2;
    double to = SPACING * 3 + JOIST.width() / 2;
    field.beamAtHighEnd(JOIST_SIZE, JOIST, from, to).rim(JOIST_SIZE, JOIST, from, to);
    field.block(1, JOIST_SIZE, JOIST, 1000, 0);
    field.of("Treated softwood").on(0);
    for (double v : new double[] {-JOIST.width() / 2, run + JOIST.width() / 2}) {
      String end = v < 0 ? "-high" : "";
      field.post("post-1" + end, "90x90", POST, 60, v, 0, JOIST_BOTTOM);
      field.post("post-2" + end, "90x90", POST, to - 60, v, 0, JOIST_BOTTOM);
    }
    return sample("both-ways", "A long deck that stands free", members, field.plan());
  }

  /** Ducts fill the bays: only what hangs below the joists can drain the deck. */
  private static SampleDeck fullBays() {
    return deck(
        "bays-in-use",
        "Ducts along every bay",
        RUN,
        new int[] {1, 1, 1, 1, 1},
        field -> {
          field.of("Galvanised steel");
          for (int bay = 0; bay < field.bays(); bay++) {
            field.pipeAlong("duct-" + (bay + 1), bay, 150, 60, RUN - 60, 200, JOIST_BOTTOM + 45);
          }
        });
  }

  private static SampleDeck openTops() {
    return deck(
        "boards-not-yet-laid",
        "Joists whose tops are still open",
        RUN,
        new int[] {1, 2, 1, 1},
        field -> {});
  }

  /** Joists at equal spacing between a ledger and a rim on two posts, on a wall. */
  private static SampleDeck deck(
      String name, String description, double run, int[] plies, Consumer<FieldBuilder> extra) {
    List<Member> members = new ArrayList<>();
    FieldBuilder field = new FieldBuilder("field", Xyz.ORIGIN, Xyz.Y, run, JOIST_TOP, members);
    for (int i = 0; i < plies.length; i++) {
      field.line(plies[i], JOIST_SIZE, JOIST, SPACING * i);
    }
    double from = -JOIST.width() / 2;
    double to = SPACING * (plies.length - 1) + JOIST.width() / 2;
    field.ledger(JOIST_SIZE, JOIST, from, to).rim(JOIST_SIZE, JOIST, from, to);
    extra.accept(field);
    FieldPlan plan = held(field, run, to);
    return sample(name, description, members, plan);
  }

  private static SampleDeck sample(
      String name, String description, List<Member> members, FieldPlan plan) {
    return new SampleDeck(
        name,
        description,
        List.of(new SampleDeck.Level("Ground", 0), new SampleDeck.Level("Deck", JOIST_TOP)),
        List.copyOf(members),
        List.of(List.of(plan)),
        Mix.PLAIN);
  }

  private static FieldPlan held(FieldBuilder field, double run, double to) {
    field.of("Treated softwood").on(0);
    double v = run + JOIST.width() / 2;
    field.post("post-1", "90x90", POST, 60, v, 0, JOIST_BOTTOM);
    field.post("post-2", "90x90", POST, to - 60, v, 0, JOIST_BOTTOM);
    field.of("Masonry");
    double middle = -JOIST.width() - 100;
    field.lying("wall", Role.WALL, "200", metric(200, 5600), -1000, to + 1000, middle, JOIST_TOP);
    return field.plan();
  }
}
