package org.underlee.framing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.framing.TimberDeck.D;
import static org.underlee.framing.TimberDeck.L;
import static org.underlee.framing.TimberDeck.W;
import static org.underlee.framing.TimberDeck.Z;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.underlee.finding.Finding;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/** Bars side by side that are no joists, and what is said where there are none. */
class NotJoistsTest {
  private static List<String> noJoistsIn(TimberDeck deck) {
    Framing framing = deck.frame();
    assertThat(framing.decks()).isEmpty();
    assertThat(framing.roles()).isEmpty();
    return framing.findings().stream().map((Finding f) -> f.rule().id()).toList();
  }

  @Test
  void anEmptyModelHasNoJoistsAndSaysSo() {
    assertThat(noJoistsIn(new TimberDeck())).containsExactly("no-joists");
  }

  @Test
  void twoBarsSideBySideAreNotAField() {
    assertThat(noJoistsIn(new TimberDeck().joist("a", 0, 0, L).joist("b", 0.4, 0, L)))
        .containsExactly("no-joists");
  }

  @Test
  void twoDoubledLinesAreNotAField() {
    assertThat(
            noJoistsIn(
                new TimberDeck()
                    .joist("a", 0, 0, L)
                    .joist("b", W, 0, L)
                    .joist("c", 0.4, 0, L)
                    .joist("d", 0.4 + W, 0, L)))
        .containsExactly("no-joists");
  }

  @Test
  void boardsSideBySideAreNotJoists() {
    TimberDeck deck = new TimberDeck();
    for (int i = 0; i < 12; i++) {
      deck.bar("IfcBeam", "board " + i, 0, i * 0.145, Z, 3, i * 0.145 + 0.14, Z + 0.028);
    }
    assertThat(noJoistsIn(deck)).containsExactly("no-joists");
  }

  @Test
  void wallStudsAreNotJoists() {
    TimberDeck deck = new TimberDeck();
    for (int i = 0; i < 8; i++) {
      deck.bar("IfcMember", "stud " + i, i * 0.4, 0, 0, i * 0.4 + W, 0.14, 2.4);
    }
    assertThat(noJoistsIn(deck)).containsExactly("no-joists");
  }

  @ParameterizedTest
  @CsvSource({"30", "-30", "10"})
  void raftersAreNotJoists(double degrees) {
    double slope = Math.toRadians(degrees);
    TimberDeck deck = new TimberDeck();
    for (int i = 0; i < 6; i++) {
      Transform place =
          Transform.frame(
              new Vec3(i * 0.6, 0, 3), new Vec3(0, Math.cos(slope), Math.sin(slope)), Vec3.X);
      deck.add(
          "IfcBeam",
          "rafter " + i,
          Extrusion.straight(place, Outline.rectangle(0, 0, W, D), 4).mesh());
    }
    assertThat(noJoistsIn(deck)).containsExactly("no-joists");
  }

  @Test
  void pipesSideBySideAreNotJoists() {
    TimberDeck deck = new TimberDeck();
    for (int i = 0; i < 6; i++) {
      deck.pipe(
          "IfcPipeSegment", "pipe " + i, new Vec3(i * 0.4, 0, 2), new Vec3(i * 0.4, 3, 2), 0.11);
    }
    assertThat(noJoistsIn(deck)).containsExactly("no-joists");
  }

  @Test
  void furnitureAndSlabsAreNotJoists() {
    TimberDeck deck = new TimberDeck();
    for (int i = 0; i < 6; i++) {
      deck.bar("IfcFurnishingElement", "bench " + i, i * 0.4, 0, 0, i * 0.4 + 0.1, 2, 0.1);
      deck.bar("IfcSlab", "paving " + i, i * 0.4, 3, 0, i * 0.4 + 0.1, 5, 0.1);
    }
    assertThat(noJoistsIn(deck)).containsExactly("no-joists");
  }
}
