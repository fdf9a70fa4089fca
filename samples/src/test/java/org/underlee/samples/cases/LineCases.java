package org.underlee.samples.cases;

import java.util.List;

/** Cases about members, joist lines, what stands between them, and bays. */
final class LineCases {
  private LineCases() {}

  static List<FramingCase> all() {
    return List.of(
        new SingleJoists(),
        new CutEnds(),
        new NotchedEnds(),
        new HoledJoists(),
        new EngineeredSections(),
        new OpenWebJoists(),
        new CrownedJoists(),
        new TwistedJoists(),
        new SeveralPlies(),
        new UnequalPlies(),
        new PartialSisters(),
        new JoistsOverABeam(true),
        new JoistsOverABeam(false),
        new SpacedPairs(),
        new BlockedBays(),
        new CrossBridging(),
        new HungJoists(),
        new Sleepers(),
        new RoundPostsAndStairs());
  }
}
