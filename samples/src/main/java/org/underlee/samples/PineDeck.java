package org.underlee.samples;

import static org.underlee.samples.Sizes.inches;
import static org.underlee.samples.Sizes.sawn;

import java.util.ArrayList;
import java.util.List;

/** A wood deck in feet and inches: 16 ft wide, 12 ft out from the wall, on a drop beam. */
final class PineDeck {
  private static final Section.Rectangle TWO_BY_EIGHT = sawn(1.5, 7.25);
  private static final double WIDTH = inches(192);
  private static final double LEDGER = inches(1.5);

  /** 144 in from the wall to the outer face of the rim, less ledger and rim. */
  private static final double RUN = inches(141);

  private static final double JOIST_TOP = inches(102);
  private static final double JOIST_BOTTOM = inches(102 - 7.25);

  /** The beam's outer face is 16 in back from the rim's inner face, and it is 3 in wide. */
  private static final double BEAM_FACE = inches(141 - 16 - 3);

  private static final double BEAM_TOP_TO_BOTTOM = inches(9.25);
  private static final int SPACES = 12; // of 16 in
  private static final int DOUBLE = 4;
  private static final int TRIPLE = 8;

  private PineDeck() {}

  static SampleDeck sample() {
    List<Member> members = new ArrayList<>();
    FieldBuilder field = new FieldBuilder("field", Xyz.ORIGIN, Xyz.Y, RUN, JOIST_TOP, members);
    lines(field);
    supports(field);
    blocking(field);
    field.standingPipe("drain", 5, inches(3.5), inches(36), inches(6), inches(-12), inches(112));
    boardsAndGuard(field);
    house(field);
    return new SampleDeck(
        "pine-deck",
        "A wood deck in feet and inches on a drop beam",
        List.of(
            new SampleDeck.Level("Ground", 0), new SampleDeck.Level("Deck", JOIST_TOP + inches(1))),
        List.copyOf(members),
        List.of(List.of(field.plan())),
        Mix.PLAIN.with(Mix.LengthUnit.FOOT));
  }

  /** 16 in on centre from the outer face of the first joist; the end joists are flush outside. */
  private static void lines(FieldBuilder field) {
    for (int i = 0; i <= SPACES; i++) {
      int plies = i == DOUBLE ? 2 : i == TRIPLE ? 3 : 1;
      double u = inches(16.0 * i);
      double half = TWO_BY_EIGHT.width() / 2;
      field.line(plies, "2x8", TWO_BY_EIGHT, Math.min(Math.max(u, half), WIDTH - half));
    }
  }

  private static void supports(FieldBuilder field) {
    field.ledger("2x8", TWO_BY_EIGHT, 0, WIDTH);
    field.rim("2x8", TWO_BY_EIGHT, 0, WIDTH);
    field.dropBeam(2, "2x10", sawn(1.5, 9.25), BEAM_FACE, 0, WIDTH, JOIST_BOTTOM);
    field.on(0);
    double beamMiddle = BEAM_FACE + inches(1.5);
    for (int i = 0; i < 4; i++) {
      double u = inches(6 + 60.0 * i);
      double top = JOIST_BOTTOM - BEAM_TOP_TO_BOTTOM;
      field.post("post-" + (i + 1), "6x6", sawn(5.5, 5.5), u, beamMiddle, 0, top);
      field
          .of("Concrete")
          .standing(
              "footing-" + i, Role.FOOTING, "12x12", sawn(12, 12), u, beamMiddle, inches(-24), 0)
          .of("Treated softwood");
    }
    field.on(1);
  }

  /** One row near the middle of the span, every second block a thickness further for nailing. */
  private static void blocking(FieldBuilder field) {
    for (int bay = 0; bay < field.bays(); bay++) {
      double at = bay % 2 == 0 ? inches(60.25) : inches(61.75);
      field.block(bay, "2x8", TWO_BY_EIGHT, at, 0);
    }
  }

  /** The divider board lies on the doubled line; the boards stop at both its sides. */
  private static void boardsAndGuard(FieldBuilder field) {
    Section.Rectangle board = sawn(5.5, 1);
    double gap = inches(0.125);
    double outside = RUN + inches(1.5);
    double divider = inches(64);
    double aside = board.width() / 2 + gap;
    field.boards("5/4x6", board, gap, gap - LEDGER, outside, 0, divider - aside);
    field.boards("5/4x6", board, gap, gap - LEDGER, outside, divider + aside, WIDTH);
    double length = outside - (gap - LEDGER);
    field.lying(
        "divider",
        Role.DECK_BOARD,
        "5/4x6",
        new Section.Rectangle(length, inches(1)),
        divider - board.width() / 2,
        divider + board.width() / 2,
        outside - length / 2,
        JOIST_TOP + inches(0.5));
    for (int i = 0; i < 4; i++) {
      double u = inches(3 + 62.0 * i);
      field.standing(
          "guard-" + i,
          Role.GUARD,
          "4x4",
          sawn(3.5, 3.5),
          u,
          outside + inches(1.75),
          JOIST_BOTTOM,
          inches(139));
    }
    field.lying(
        "guard-rail",
        Role.GUARD,
        "2x4",
        sawn(3.5, 1.5),
        0,
        WIDTH,
        outside + inches(1.75),
        inches(139.75));
  }

  private static void house(FieldBuilder field) {
    double from = inches(-48);
    double to = inches(240);
    field
        .on(0)
        .lying(
            "wall", Role.WALL, "2x6", sawn(6.5, 216), from, to, -LEDGER - inches(3.25), inches(108))
        .of("Concrete")
        .lying("slab", Role.SLAB, "6 in", sawn(144, 6), from, to, -LEDGER - inches(72), inches(-3));
  }
}
