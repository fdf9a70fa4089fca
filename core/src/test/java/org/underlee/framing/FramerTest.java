package org.underlee.framing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.underlee.framing.TimberDeck.D;
import static org.underlee.framing.TimberDeck.L;
import static org.underlee.framing.TimberDeck.W;
import static org.underlee.framing.TimberDeck.Z;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

class FramerTest {
  private static final double EXACT = 1e-9;

  @Test
  void aPlainDeckIsOneFieldOfSingleLinesHeldByALedgerAndARim() {
    Framing framing = TimberDeck.plain(6).frame();
    assertThat(framing.decks()).hasSize(1);
    assertThat(framing.findings()).isEmpty();
    Deck deck = framing.decks().get(0);
    assertThat(deck.id()).isEqualTo("deck-1");
    assertThat(deck.top()).isCloseTo(Z + D, within(EXACT));
    assertThat(deck.storey()).map(Storey::globalId).contains("storey");
    Field field = deck.fields().get(0);
    assertThat(field.id()).isEqualTo("deck-1/field-1");
    assertThat(lines(field)).containsExactly("j1", "j2", "j3", "j4", "j5", "j6");
    assertThat(field.lines()).extracting(JoistLine::id).startsWith("J1", "J2");
    assertThat(TimberDeck.names(field.supports(Role.LEDGER))).containsExactly("bar on the house");
    assertThat(TimberDeck.names(field.supports(Role.RIM))).containsExactly("rim");
  }

  @Test
  void theFrameStandsAtTheLeftFaceTheHighFaceAndTheJoistBottom() {
    Field field = TimberDeck.plain(4).field();
    assertThat(field.frame().origin().distance(new Vec3(0, 0, Z))).isLessThan(EXACT);
    assertThat(field.frame().x().distance(Vec3.X)).isLessThan(EXACT);
    assertThat(field.frame().y().distance(Vec3.Y)).isLessThan(EXACT);
    JoistLine third = field.lines().get(2);
    assertThat(third.left().at(1)).isCloseTo(0.8, within(EXACT));
    assertThat(third.right().at(1)).isCloseTo(0.8 + W, within(EXACT));
    assertThat(third.width()).isCloseTo(W, within(EXACT));
    assertThat(third.depth()).isCloseTo(D, within(EXACT));
    assertThat(third.bottom().at(2)).isCloseTo(0, within(EXACT));
    assertThat(third.stretch().from()).isCloseTo(0, within(EXACT));
    assertThat(third.stretch().to()).isCloseTo(L, within(EXACT));
  }

  /** The ply gap is at most 6 mm (design, section 1). */
  @ParameterizedTest
  @CsvSource({"0,4", "0.003,4", "0.006,4", "0.007,5", "0.02,5"})
  void twoJoistsActAsOneWhenTheirGapIsAtMostSixMillimetres(double gap, int lines) {
    for (int i = 1; i < 4; i++) {
      double x = i * 0.4;
      TimberDeck deck = TimberDeck.plain(4).joist("second ply", x + W + gap, 0, L);
      Field field = deck.field();
      assertThat(field.lines()).as("beside joist %s", i + 1).hasSize(lines);
      if (lines == 4) {
        assertThat(lines(field)).contains("j" + (i + 1) + "+second ply");
        assertThat(field.lines().get(i).width()).isCloseTo(2 * W + gap, within(EXACT));
        assertThat(field.lines().get(i).why()).contains("2 plies");
      }
    }
  }

  @Test
  void fourPliesAreOneLine() {
    TimberDeck deck = TimberDeck.plain(5);
    for (int ply = 1; ply < 4; ply++) {
      deck.joist("ply" + ply, 0.8 + ply * W, 0, L);
    }
    Field field = deck.field();
    assertThat(lines(field)).containsExactly("j1", "j2", "j3+ply1+ply2+ply3", "j4", "j5");
    assertThat(field.lines().get(2).width()).isCloseTo(4 * W, within(EXACT));
  }

  /** Joists fanned by 2° each; faces from the angles by trigonometry. */
  @Test
  void splayedJoistsKeepTheirFacesOverTheStation() {
    TimberDeck deck =
        new TimberDeck()
            .bar("IfcBeam", "ledger board", -0.2, -W, Z, 1.4, 0, Z + D)
            .bar("IfcBeam", "rim board", -0.6, L, Z, 1.8, L + W, Z + D);
    for (int i = 0; i < 4; i++) {
      deck.prism("j" + (i + 1), fanned(0.4 * i, Math.toRadians(-3 + 2 * i)), Z, Z + D);
    }
    Field field = deck.field();
    assertThat(field.lines()).hasSize(4);
    double u0 = -W / 2 / Math.cos(Math.toRadians(3));
    for (int i = 0; i < 4; i++) {
      double a = Math.toRadians(-3 + 2 * i);
      JoistLine line = field.lines().get(i);
      double half = W / 2 / Math.cos(a);
      for (double v : new double[] {0, 1, L}) {
        double middle = 0.4 * i + v * Math.tan(a) - u0;
        assertThat(line.left().at(v)).isCloseTo(middle - half, within(1e-6));
        assertThat(line.right().at(v)).isCloseTo(middle + half, within(1e-6));
      }
      assertThat(line.width()).isCloseTo(W, within(1e-6));
    }
  }

  /** The plan of a joist from (x, 0) at an angle to the y axis, its ends cut along x. */
  private static List<Vec2> fanned(double x, double angle) {
    double half = W / 2 / Math.cos(angle);
    double far = x + L * Math.tan(angle);
    return List.of(
        new Vec2(x - half, 0),
        new Vec2(x + half, 0),
        new Vec2(far + half, L),
        new Vec2(far - half, L));
  }

  /** A deck out of level by 1:100 along the joists: the bottom falls with it. */
  @Test
  void joistsOutOfLevelKeepTheirSlope() {
    double length = Math.hypot(1, 0.01);
    Vec3 along = new Vec3(0, 1 / length, -0.01 / length);
    Transform tilt = new Transform(Vec3.ZERO, Vec3.X, along, Vec3.X.cross(along));
    Field field = TimberDeck.plain(4).moved(tilt).field();
    assertThat(field.lines()).hasSize(4);
    for (JoistLine line : field.lines()) {
      assertThat(line.bottom().slope()).isCloseTo(-0.01, within(EXACT));
    }
    assertThat(field.frame().y().distance(Vec3.Y)).isLessThan(EXACT);
  }

  @Test
  void joistsMayLieOnADropBeamAndReachPastIt() {
    TimberDeck deck =
        TimberDeck.plain(5)
            .bar("IfcBeam", "beam ply 1", -0.1, 2.2, Z - D, 1.8, 2.2 + W, Z)
            .bar("IfcBeam", "beam ply 2", -0.1, 2.2 + W, Z - D, 1.8, 2.2 + 2 * W, Z)
            .bar("IfcColumn", "left foot", 0.1, 2.19, 0, 0.19, 2.28, Z - D)
            .bar("IfcColumn", "right foot", 1.5, 2.19, 0, 1.59, 2.28, Z - D);
    Field field = deck.field();
    assertThat(TimberDeck.names(field.supports(Role.DROP_BEAM)))
        .containsExactlyInAnyOrder("beam ply 1", "beam ply 2");
    assertThat(TimberDeck.names(field.posts()))
        .containsExactlyInAnyOrder("left foot", "right foot");
    assertThat(TimberDeck.names(field.supports(Role.RIM))).containsExactly("rim");
    assertThat(field.lines().get(0).stretch().to()).isCloseTo(L, within(EXACT));
    assertThat(deck.role("beam ply 1")).isEqualTo("drop-beam");
    assertThat(deck.role("left foot")).isEqualTo("post");
  }

  @Test
  void joistsMayEndOnADeeperFlushBeamOnPosts() {
    TimberDeck deck =
        new TimberDeck()
            .joists(5)
            .ledger("bar on the house", 5)
            .wall()
            .bar("IfcBeam", "deep", 0, L, Z - 0.05, 1.638, L + W, Z + D)
            .bar("IfcColumn", "left foot", 0.1, L, 0, 0.14, L + W, Z - 0.05)
            .bar("IfcColumn", "right foot", 1.5, L, 0, 1.54, L + W, Z - 0.05);
    assertThat(TimberDeck.names(deck.field().supports(Role.FLUSH_BEAM))).containsExactly("deep");
    assertThat(deck.field().supports(Role.RIM)).isEmpty();
  }

  @Test
  void aRimOfTheJoistsOwnStockStaysARimWhenItStandsOnPosts() {
    TimberDeck deck =
        TimberDeck.plain(5)
            .bar("IfcColumn", "left foot", 0.1, L, 0, 0.14, L + W, Z)
            .bar("IfcColumn", "right foot", 1.5, L, 0, 1.54, L + W, Z);
    assertThat(TimberDeck.names(deck.field().supports(Role.RIM))).containsExactly("rim");
    assertThat(TimberDeck.names(deck.field().posts()))
        .containsExactlyInAnyOrder("left foot", "right foot");
  }

  /** One joist cut out between two headers that hang on its neighbours. */
  static TimberDeck withOpening() {
    return TimberDeck.plain(5)
        .without("j3")
        .joist("high tail", 0.8, 0, 1)
        .bar("IfcBeam", "high header", 0.4 + W, 1, Z, 1.2, 1 + W, Z + D)
        .bar("IfcBeam", "low header", 0.4 + W, 2 - W, Z, 1.2, 2, Z + D)
        .joist("low tail", 0.8, 2, L);
  }

  @Test
  void headersHangBetweenTheirTrimmers() {
    TimberDeck deck = withOpening();
    Field field = deck.field();
    assertThat(TimberDeck.names(field.supports(Role.HEADER)))
        .containsExactlyInAnyOrder("high header", "low header");
    assertThat(TimberDeck.names(field.trimmers())).containsExactlyInAnyOrder("j2", "j4");
    assertThat(deck.role("high header")).isEqualTo("header");
    assertThat(lines(field)).contains("high tail", "low tail").hasSize(6);
  }

  @Test
  void twoFieldsAtARightAngleAreOneDeck() {
    TimberDeck deck = TimberDeck.plain(6);
    double x = 2.0 + W;
    // from the last joist of the first field outwards, to a rim of its own on posts
    for (int i = 0; i < 4; i++) {
      double y = 0.3 + i * 0.4;
      deck.bar("IfcBeam", "k" + (i + 1), x, y, Z, x + 2, y + W, Z + D);
    }
    deck.bar("IfcBeam", "side rim", x + 2, 0.2, Z, x + 2 + W, 1.7, Z + D)
        .bar("IfcColumn", "foot 1", x + 2, 0.3, 0, x + 2 + W, 0.34, Z)
        .bar("IfcColumn", "foot 2", x + 2, 1.5, 0, x + 2 + W, 1.54, Z);
    Framing framing = deck.frame();
    assertThat(framing.decks()).hasSize(1);
    List<Field> fields = framing.decks().get(0).fields();
    assertThat(fields).extracting(Field::id).containsExactly("deck-1/field-1", "deck-1/field-2");
    assertThat(fields.get(0).frame().y().distance(Vec3.Y)).isLessThan(EXACT);
    assertThat(fields.get(1).frame().y().distance(Vec3.X)).isLessThan(EXACT);
    assertThat(lines(fields.get(1))).containsExactly("k4", "k3", "k2", "k1");
    assertThat(fields.get(1).fallWhy()).contains("posts");
    assertThat(deck.role("j6")).isEqualTo("joist");
  }

  @Test
  void levelsOfDifferentHeightAreDecksOfTheirOwn() {
    TimberDeck deck = TimberDeck.plain(4);
    deck.moved(Transform.translation(new Vec3(0, 6, -1)))
        .elements()
        .forEach(e -> deck.add(e.ifcClass(), "low " + e.name(), e.shape()));
    Framing framing = deck.frame();
    assertThat(framing.decks()).extracting(Deck::id).containsExactly("deck-1", "deck-2");
    assertThat(framing.decks().get(0).top()).isCloseTo(Z + D, within(EXACT));
    assertThat(framing.decks().get(1).top()).isCloseTo(Z + D - 1, within(EXACT));
  }

  @Test
  void aFloorWithWallsAroundItIsInside() {
    assertThat(TimberDeck.plain(6).frame().decks().get(0).outside().value()).isTrue();
    TimberDeck room =
        TimberDeck.open(6)
            .bar("IfcWall", "north", -0.3, -0.24, 0, 2.4, -W, 5)
            .bar("IfcWall", "south", -0.3, L + W, 0, 2.4, L + 0.24, 5)
            .bar("IfcWall", "west", -0.3, -W, 0, -0.1, L, 5)
            .bar("IfcWall", "east", 2.1, -W, 0, 2.3, L, 5);
    Deck.Judgement judgement = room.frame().decks().get(0).outside();
    assertThat(judgement.value()).isFalse();
    assertThat(judgement.why()).contains("walls rise around it (100 % of the view): a room");
  }

  @Test
  void blockingGuardsAndBoardsHaveTheirRoles() {
    TimberDeck deck =
        TimberDeck.plain(4)
            .bar("IfcMember", "filler", 0.4 + W, 1.5, Z, 0.8, 1.5 + W, Z + D)
            .bar("IfcMember", "baluster post", 0.5, L + W, Z - 0.1, 0.59, L + W + 0.09, Z + 1.2)
            .bar("IfcPlate", "plank", -0.05, 1, Z + D, 1.4, 1.14, Z + D + 0.028)
            .bar("IfcCovering", "cover", -0.05, 1.2, Z + D, 1.4, 1.34, Z + D + 0.028);
    assertThat(deck.role("filler")).isEqualTo("blocking");
    assertThat(deck.role("baluster post")).isEqualTo("guard-post");
    assertThat(deck.role("plank")).isEqualTo("deck-board");
    assertThat(deck.role("cover")).isEqualTo("deck-board");
    assertThat(deck.role("j1")).isEqualTo("joist");
    assertThat(deck.role("house")).isEmpty();
  }

  @Test
  void aFittingNameAddsToTheConfidence() {
    TimberDeck deck = TimberDeck.plain(4).renamed("j2", "Joist 2");
    assertThat(given(deck, "Joist 2").confidence())
        .isGreaterThan(given(deck, "j1").confidence())
        .isLessThan(1);
    assertThat(given(deck, "Joist 2").why()).contains("its name agrees");
  }

  private static RoleGiven given(TimberDeck deck, String name) {
    return deck.frame().roles().stream()
        .filter(r -> r.member().id().equals(name))
        .findFirst()
        .orElseThrow();
  }

  static List<String> lines(Field field) {
    return field.lines().stream()
        .map(l -> String.join("+", TimberDeck.names(l.plies()).toList()))
        .toList();
  }
}
