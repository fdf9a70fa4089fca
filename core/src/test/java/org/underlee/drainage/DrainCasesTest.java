package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;
import org.underlee.bay.FieldBays;
import org.underlee.drainage.DrainCases.Placed;
import org.underlee.drainage.Piece.Kind;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;
import org.underlee.layout.Onto;
import org.underlee.layout.PartKind;

/**
 * What is followed of a deck and its parts. The deck's first joist begins at x 0; its water goes
 * along y.
 */
class DrainCasesTest {
  private static final double W = TimberDeck.W;
  private static final double L = TimberDeck.L;

  private static FieldBays bays(TimberDeck deck) {
    assertThat(deck.fieldBays()).hasSize(1);
    return deck.fieldBays().get(0);
  }

  private static DrainCase deck(TimberDeck deck, Placed... parts) {
    return DrainCases.of(bays(deck), List.of(parts));
  }

  private static Placed part(PartKind kind) {
    return new Placed("part", kind, ByHand.box(0, 0, 0, 1, 1, 1));
  }

  private static Stream<String> framing(DrainCase given) {
    assertThat(given.pieces()).allMatch(p -> p.kind() == Kind.JOIST && !p.sealed());
    return given.pieces().stream().map(Piece::id);
  }

  /** Joists of 38 mm at 400 mm: out to the middle of the joist on each side, 3 m long. */
  @Test
  void aBayAnswersForTheRainOutToTheMiddlesOfItsJoists() {
    DrainCase given = deck(TimberDeck.plain(3));
    assertThat(given.catchments()).hasSize(2);
    assertThat(given.catchments().get(0).bay()).isEqualTo("B1");
    double[][] corners = {{W / 2, 0}, {0.4 + W / 2, 0}, {0.4 + W / 2, L}, {W / 2, L}};
    for (int i = 0; i < 4; i++) {
      Vec2 corner = given.catchments().get(0).outline().get(i);
      Vec3 world = given.frame().apply(new Vec3(corner.x(), corner.y(), 0));
      assertThat(world.x()).isCloseTo(corners[i][0], within(1e-6));
      assertThat(world.y()).isCloseTo(corners[i][1], within(1e-6));
    }
    assertThat(given.frame().direction(Vec3.X).y()).isCloseTo(1, within(1e-9));
    assertThat(given.frame().determinant()).isCloseTo(1, within(1e-9));
  }

  @Test
  void joistsWhatBoundsThemPostsAndBlocksAreFramingAndEachIsThereOnce() {
    TimberDeck deck =
        TimberDeck.plain(3).bar("IfcBeam", "block", W, 1, TimberDeck.Z, 0.4, 1 + W, 2.6);
    assertThat(framing(deck(deck)))
        .contains("j1", "j2", "j3", "bar on the house", "rim", "block")
        .doesNotHaveDuplicates();
  }

  @ParameterizedTest
  @EnumSource(
      value = PartKind.class,
      names = {"TAPE", "STRAP", "BATTEN_HANGER", "FASTENER"})
  void whatHoldsNoWaterIsLeftOut(PartKind kind) {
    assertThat(framing(deck(TimberDeck.plain(3), part(kind)))).doesNotContain("part");
  }

  @ParameterizedTest
  @EnumSource(
      value = PartKind.class,
      mode = Mode.EXCLUDE,
      names = {"TAPE", "STRAP", "BATTEN_HANGER", "FASTENER"})
  void anyOtherPartIsFollowedAsWhatItIs(PartKind kind) {
    Piece piece = deck(TimberDeck.plain(3), part(kind)).pieces().get(0);
    Kind expected =
        switch (kind) {
          case GUTTER -> Kind.GUTTER;
          case OUTLET -> Kind.OUTLET;
          case DOWNSPOUT, ELBOW -> Kind.PIPE;
          case CAP_STRIP, BATTEN -> Kind.JOIST;
          default -> Kind.SHEET;
        };
    assertThat(piece.id()).isEqualTo("part");
    assertThat(piece.kind()).isEqualTo(expected);
    assertThat(piece.sealed()).isEqualTo(kind == PartKind.COLLAR_PIECE);
  }

  @Test
  void withoutPostsTheGroundIsNotKnown() {
    assertThat(deck(TimberDeck.plain(3)).ground()).isEmpty();
  }

  /** Of three posts with their feet at 0, −0.3 and −0.1 the middle one. */
  @Test
  void theGroundIsAtTheFootOfTheMiddlePost() {
    TimberDeck deck = TimberDeck.plain(3).bar("IfcBeam", "beam", 0, 2, 2.3, 0.838, 2 + W, 2.5);
    double[] feet = {0, -0.3, -0.1};
    for (int i = 0; i < 3; i++) {
      double x = 0.05 + 0.3 * i;
      deck.bar("IfcColumn", "post" + i, x, 2, feet[i], x + 0.09, 2 + W, 2.3);
    }
    DrainCase given = deck(deck);
    assertThat(framing(given)).contains("post0", "post1", "post2");
    double height = given.frame().origin().z() + given.ground().orElseThrow();
    assertThat(height).isCloseTo(-0.1, within(1e-9));
  }

  @Test
  void rainOfARoofIsPlacedInTheFrameOfTheCase() {
    DrainCase given = deck(TimberDeck.plain(3)).with(List.of(new Onto(12, new Vec2(0.2, 1.5))));
    assertThat(given.arrivals()).hasSize(1);
    Arrival arrival = given.arrivals().get(0);
    assertThat(arrival.area()).isEqualTo(12);
    Vec3 world = given.frame().apply(new Vec3(arrival.u(), arrival.v(), 0));
    assertThat(world.x()).isCloseTo(0.2, within(1e-9));
    assertThat(world.y()).isCloseTo(1.5, within(1e-9));
  }
}
