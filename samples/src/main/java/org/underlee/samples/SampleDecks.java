package org.underlee.samples;

import static org.underlee.samples.Sizes.sawn;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** The samples, and decks made to measure for tests. */
public final class SampleDecks {
  private static final Section.Rectangle TWO_BY_EIGHT = sawn(1.5, 7.25);
  private static final double JOIST_TOP = 3000;
  private static final List<SampleDeck.Level> LEVELS =
      List.of(new SampleDeck.Level("Ground", 0), new SampleDeck.Level("Deck", JOIST_TOP));

  private SampleDecks() {}

  /** The published samples. */
  public static List<SampleDeck> all() {
    return List.of(PineDeck.sample(), HarbourBalcony.sample(), HillsideTerrace.sample());
  }

  /**
   * A bare deck of single 2x8 joists between a ledger and a rim on two posts.
   *
   * @param clearRunMm from the ledger's face to the rim's face
   * @param spacingMm from joist centre to joist centre
   * @param joists at least two
   */
  public static SampleDeck plain(double clearRunMm, double spacingMm, int joists) {
    List<Member> members = new ArrayList<>();
    FieldBuilder field =
        new FieldBuilder("field", Xyz.ORIGIN, Xyz.Y, clearRunMm, JOIST_TOP, members);
    for (int i = 0; i < joists; i++) {
      field.line(1, "2x8", TWO_BY_EIGHT, spacingMm * i);
    }
    finish(field, clearRunMm, spacingMm * (joists - 1), false);
    return sample("plain", members, field);
  }

  /** Any deck of one field; the same for the same seed. */
  public static SampleDeck random(long seed) {
    Random random = new Random(seed);
    List<Member> members = new ArrayList<>();
    double run = 1500 + random.nextInt(3000);
    FieldBuilder field = new FieldBuilder("field", Xyz.ORIGIN, Xyz.Y, run, JOIST_TOP, members);
    int lines = 3 + random.nextInt(9);
    double u = 0;
    for (int i = 0; i < lines; i++) {
      field.line(1 + Math.max(0, random.nextInt(7) - 4), "2x8", TWO_BY_EIGHT, u);
      u += i < lines - 1 ? 350 + random.nextInt(270) : 0;
    }
    furnish(field, run, random);
    finish(field, run, u, random.nextBoolean());
    return sample("random-" + seed, members, field);
  }

  /** Blocking away from the first quarter, where the pipe stands. */
  private static void furnish(FieldBuilder field, double run, Random random) {
    int rows = random.nextInt(3);
    double depth = random.nextBoolean() ? TWO_BY_EIGHT.depth() : TWO_BY_EIGHT.depth() / 2;
    for (int row = 1; row <= rows; row++) {
      for (int bay = 0; bay < field.bays(); bay++) {
        Section block = new Section.Rectangle(TWO_BY_EIGHT.width(), depth);
        field.block(bay, "2x8", block, run * (row + 1) / (rows + 2), 0);
      }
    }
    int bay = random.nextInt(field.bays());
    field.standingPipe("pipe", bay, 50 + random.nextInt(60), run / 6, 120, -200, JOIST_TOP + 200);
  }

  private static void finish(FieldBuilder field, double run, double last, boolean flushBeam) {
    double over = 1.5 * TWO_BY_EIGHT.width(); // as far as a tripled end line reaches
    field.ledger("2x8", TWO_BY_EIGHT, -over, last + over);
    double low;
    if (flushBeam) {
      Section beam = sawn(3.5, 9.25);
      field.flushBeam("4x10", beam, -over, last + over);
      low = beam.depth();
    } else {
      field.rim("2x8", TWO_BY_EIGHT, -over, last + over);
      low = TWO_BY_EIGHT.depth();
    }
    double v = run + (flushBeam ? sawn(3.5, 9.25) : TWO_BY_EIGHT).width() / 2;
    field.on(0);
    field.post("post-1", "4x4", sawn(3.5, 3.5), 100, v, 0, JOIST_TOP - low);
    field.post("post-2", "4x4", sawn(3.5, 3.5), last - 100, v, 0, JOIST_TOP - low);
    field.lying(
        "wall", Role.WALL, "200", Sizes.metric(200, 6000), -1500, last + 1500, -138.1, 3000);
  }

  private static SampleDeck sample(String name, List<Member> members, FieldBuilder field) {
    return new SampleDeck(
        name,
        "A deck for tests",
        LEVELS,
        List.copyOf(members),
        List.of(List.of(field.plan())),
        Mix.PLAIN);
  }
}
