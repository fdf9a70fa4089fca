package org.underlee.samples.cases;

import java.util.List;

/** Cases about what holds joists, and about fields and decks. */
final class FieldCases {
  private FieldCases() {}

  static List<FramingCase> all() {
    return List.of(
        new RightAngleWrap(),
        new HipCorner(),
        new AngledEnds(),
        new CurvedRim(),
        new SeveralLevels(),
        new Openings(),
        new Cantilevers(),
        new SlopedDeck(),
        new TwoFaces(),
        new BeamsOnBeams(),
        new Fans(),
        new OutOfLevel(),
        new GuardsAndStairs(),
        new InARecess(),
        new NotADeck());
  }
}
