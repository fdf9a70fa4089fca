package org.underlee.check;

import java.util.List;
import org.underlee.framing.BuildingElement;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Extrusion;
import org.underlee.geom.Outline;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec2;
import org.underlee.geom.Vec3;

/** Roofs of a house that stands at the high end of a deck, at y = 0. */
final class RoofsOver {
  /** The ridge, seen from above. */
  static final double RIDGE = -4;

  private static final double HIGH = 6;
  private static final double THICK = 0.2;

  /** Drop over run. */
  private static final double PITCH = 0.5;

  private RoofsOver() {}

  /** Falls from the ridge to an eave, from x to x. */
  static BuildingElement falling(double from, double to, double eave) {
    return roof(from, to, RIDGE, HIGH, eave, HIGH - PITCH * (eave - RIDGE));
  }

  /** A level side view in y and z, drawn out along x. */
  static BuildingElement roof(
      double from, double to, double high, double highZ, double eave, double eaveZ) {
    Transform side = new Transform(new Vec3(from, 0, 0), Vec3.Y, Vec3.Z, Vec3.X);
    Outline outline =
        Outline.of(
            List.of(
                new Vec2(Math.min(high, eave), (high < eave ? highZ : eaveZ) - THICK),
                new Vec2(Math.max(high, eave), (high < eave ? eaveZ : highZ) - THICK),
                new Vec2(Math.max(high, eave), high < eave ? eaveZ : highZ),
                new Vec2(Math.min(high, eave), high < eave ? highZ : eaveZ)));
    return new TimberDeck()
        .add("IfcRoof", "House roof", Extrusion.straight(side, outline, to - from).mesh())
        .elements()
        .get(0);
  }
}
