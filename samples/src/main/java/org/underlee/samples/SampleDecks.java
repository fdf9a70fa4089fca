package org.underlee.samples;

import static org.underlee.samples.Sizes.sawn;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** The samples, and decks made to measure for tests. */
public final class SampleDecks {
  private static final Section.Rectangle TWO_BY_EIGHT = sawn(1.5, 7.25);
  private static final Section.Rectangle FLUSH_BEAM = sawn(3.5, 9.25);

  /** Ledger, rim and beam reach past the outer lines as far as a tripled line does. */
  private static final double OVER = 1.5 * TWO_BY_EIGHT.width();

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
    return sample("plain", members, List.of(field.plan()));
  }

  /**
   * Two fields, one after the other: a ledger, a flush beam that splits every bay in two, and a
   * rim.
   *
   * @param nearRunMm clear, from the ledger's face to the beam's near face
   * @param farRunMm clear, from the beam's far face to the rim's face
   * @param joists of each field, 400 mm apart
   */
  public static SampleDeck twoSpans(double nearRunMm, double farRunMm, int joists) {
    List<Member> members = new ArrayList<>();
    double width = 400.0 * (joists - 1);
    FieldBuilder near = span("near", 0, nearRunMm, joists, members);
    finish(near, nearRunMm, width, true);
    FieldBuilder far = span("far", nearRunMm + FLUSH_BEAM.width(), farRunMm, joists, members);
    far.carriedBy(Role.BEAM, "near/beam");
    far.carriedBy(Role.POST, "near/post-1").carriedBy(Role.POST, "near/post-2");
    far.rim("2x8", TWO_BY_EIGHT, -OVER, width + OVER);
    postsAtLowEnd(far, farRunMm, width, TWO_BY_EIGHT);
    List<FieldPlan> deck = List.of(near.plan(), far.plan());
    return sample("two-spans", members, deck);
  }

  private static FieldBuilder span(
      String key, double start, double run, int joists, List<Member> members) {
    FieldBuilder field =
        new FieldBuilder(key, new Xyz(0, start, 0), Xyz.Y, run, JOIST_TOP, members);
    for (int i = 0; i < joists; i++) {
      field.line(1, "2x8", TWO_BY_EIGHT, 400.0 * i);
    }
    return field;
  }

  /** Any deck of one field with one pipe; the same for the same seed. */
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
    return sample("random-" + seed, members, List.of(field.plan()));
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
    pipe(field, run, random);
  }

  /** Through, along or across, clear of the blocking. */
  private static void pipe(FieldBuilder field, double run, Random random) {
    int bay = random.nextInt(field.bays());
    int size = 40 + random.nextInt(60);
    switch (random.nextInt(3)) {
      case 0 -> field.standingPipe("pipe", bay, size, run / 6, 120, -200, JOIST_TOP + 200);
      case 1 -> field.pipeAlong("pipe", bay, size, run / 10, run / 3, 120, JOIST_TOP - 90);
      default -> {
        double axis = JOIST_TOP - TWO_BY_EIGHT.depth() - 60 - size / 2.0;
        field.pipeAcross("pipe", bay, field.bays(), size, run / 6, axis);
      }
    }
  }

  private static void finish(FieldBuilder field, double run, double last, boolean flushBeam) {
    field.ledger("2x8", TWO_BY_EIGHT, -OVER, last + OVER);
    if (flushBeam) {
      field.flushBeam("4x10", FLUSH_BEAM, -OVER, last + OVER);
    } else {
      field.rim("2x8", TWO_BY_EIGHT, -OVER, last + OVER);
    }
    postsAtLowEnd(field, run, last, flushBeam ? FLUSH_BEAM : TWO_BY_EIGHT);
    double middle = -TWO_BY_EIGHT.width() - 100;
    field.lying(
        "wall", Role.WALL, "200", Sizes.metric(200, 6000), -1500, last + 1500, middle, 3000);
  }

  private static void postsAtLowEnd(FieldBuilder field, double run, double last, Section carried) {
    double v = run + carried.width() / 2;
    double top = JOIST_TOP - carried.depth();
    field.on(0);
    field.post("post-1", "4x4", sawn(3.5, 3.5), 100, v, 0, top);
    field.post("post-2", "4x4", sawn(3.5, 3.5), last - 100, v, 0, top);
  }

  private static SampleDeck sample(String name, List<Member> members, List<FieldPlan> deck) {
    return new SampleDeck(
        name, "A deck for tests", LEVELS, List.copyOf(members), List.of(deck), Mix.PLAIN);
  }
}
