package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;

/**
 * Joists that turn about their axis by up to 2° from the ledger, where they are plumb, to the rim.
 */
final class TwistedJoists implements FramingCase {
  private static final int RINGS = 9;
  private static final int[][] CORNERS = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};

  @Override
  public String name() {
    return "twisted joists";
  }

  @Override
  public Model make(Random random) {
    SimpleDeck deck = SimpleDeck.any(random);
    double[] twist = new double[deck.u.length];
    List<Truth.Line> lines = new ArrayList<>();
    for (int i = 0; i < deck.u.length; i++) {
      twist[i] = Math.toRadians(deck.between(-2, 2));
      deck.joist(SimpleDeck.name(i), body(deck, deck.u[i] + deck.w / 2, twist[i]));
      lines.add(
          new Truth.Line(List.of(SimpleDeck.name(i)), 1, 2 * reach(deck, twist[i] / 2), deck.d));
    }
    deck.held(0);
    List<Truth.Bay> bays = new ArrayList<>();
    for (Truth.Bay bay : deck.bays()) {
      double centres = deck.u[bay.right()] - deck.u[bay.left()];
      double low = centres - reach(deck, twist[bay.left()]) - reach(deck, twist[bay.right()]);
      bays.add(
          new Truth.Bay(
              bay.left(),
              bay.right(),
              deck.run,
              List.of(Shapes.at(0, centres - deck.w), Shapes.at(deck.run, low)),
              List.of(),
              List.of(),
              List.of()));
    }
    return deck.model(lines, bays);
  }

  /** How far the section reaches to a side of its middle. */
  private static double reach(SimpleDeck deck, double angle) {
    return deck.w / 2 * Math.cos(angle) + deck.d / 2 * Math.abs(Math.sin(angle));
  }

  private static Body body(SimpleDeck deck, double u, double twist) {
    List<Xyz> points = new ArrayList<>();
    double middle = deck.top - deck.d / 2;
    for (int r = 0; r < RINGS; r++) {
      double share = (double) r / (RINGS - 1);
      double sin = StrictMath.sin(twist * share);
      double cos = StrictMath.cos(twist * share);
      for (int[] c : CORNERS) {
        double a = c[0] * deck.w / 2;
        double b = c[1] * deck.d / 2;
        points.add(new Xyz(u + a * cos - b * sin, deck.run * share, middle + a * sin + b * cos));
      }
    }
    List<Body.Face> faces = new ArrayList<>();
    // seen from the house the corners run counter-clockwise, which is outward there
    faces.add(new Body.Face(List.of(0, 1, 2, 3), List.of()));
    int last = 4 * (RINGS - 1);
    faces.add(new Body.Face(List.of(last + 3, last + 2, last + 1, last), List.of()));
    for (int r = 0; r + 1 < RINGS; r++) {
      for (int k = 0; k < 4; k++) {
        int a = 4 * r + k;
        int b = 4 * r + (k + 1) % 4;
        faces.add(new Body.Face(List.of(b, a, a + 4), List.of()));
        faces.add(new Body.Face(List.of(b, a + 4, b + 4), List.of()));
      }
    }
    return new Body.Polyhedron(points, faces);
  }
}
