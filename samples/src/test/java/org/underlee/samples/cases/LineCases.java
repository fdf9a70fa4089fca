package org.underlee.samples.cases;

import java.util.List;

/** Cases about members, joist lines, what stands between them, and bays. */
final class LineCases {
  private LineCases() {}

  static List<FramingCase> all() {
    return List.of(new SingleJoists(), new SeveralPlies(), new BlockedBays());
  }
}
