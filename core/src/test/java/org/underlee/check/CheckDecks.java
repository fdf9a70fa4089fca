package org.underlee.check;

import java.util.List;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** Decks of five joists for the cases of checks: plain, longer, on a beam, with a joist cut. */
final class CheckDecks {
  static final int JOISTS = 5;

  private static final double W = TimberDeck.W;
  private static final double D = TimberDeck.D;
  private static final double L = TimberDeck.L;
  private static final double Z = TimberDeck.Z;

  /** From the outside of the first joist to that of the last. */
  static final double WIDE = (JOISTS - 1) * 0.4 + W;

  private CheckDecks() {}

  static TimberDeck deck() {
    return TimberDeck.plain(JOISTS);
  }

  static TimberDeck onBeam() {
    return deck().bar("IfcBeam", "beam", 0, 2, Z - 0.2, WIDE, 2 + W, Z);
  }

  static TimberDeck longer() {
    TimberDeck deck = new TimberDeck().ledger("bar on the house", JOISTS).wall();
    for (int i = 0; i < JOISTS; i++) {
      deck.joist("j" + (i + 1), i * 0.4, 0, 3.4);
    }
    return deck.bar("IfcBeam", "rim", 0, 3.4, Z, WIDE, 3.4 + W, Z + D);
  }

  /** The third joist has a notch in its underside, in the middle of its length. */
  static TimberDeck notched(double depth) {
    return cut(
        List.of(
            new Vec2(0, 0),
            new Vec2(0.6, 0),
            new Vec2(0.6, depth),
            new Vec2(0.8, depth),
            new Vec2(0.8, 0),
            new Vec2(L, 0),
            new Vec2(L, D),
            new Vec2(0, D)),
        List.of());
  }

  static TimberDeck notchedAtItsEnd(double depth) {
    return cut(
        List.of(
            new Vec2(0, depth),
            new Vec2(0.12, depth),
            new Vec2(0.12, 0),
            new Vec2(L, 0),
            new Vec2(L, D),
            new Vec2(0, D)),
        List.of());
  }

  static TimberDeck bored(double height) {
    double low = (D - height) / 2;
    List<Vec2> side = List.of(new Vec2(0, 0), new Vec2(L, 0), new Vec2(L, D), new Vec2(0, D));
    List<Vec2> hole =
        List.of(
            new Vec2(0.7, low),
            new Vec2(0.7, low + height),
            new Vec2(0.78, low + height),
            new Vec2(0.78, low));
    return cut(side, List.of(hole));
  }

  /** With a joist of another side view. */
  private static TimberDeck cut(List<Vec2> side, List<List<Vec2>> holes) {
    Transform frame = new Transform(new Vec3(0.8, 0, Z), Vec3.Y, Vec3.Z, Vec3.X);
    return deck()
        .without("j3")
        .add("IfcBeam", "j3", Extrusion.straight(frame, new Outline(side, holes), W).mesh());
  }
}
