package org.underlee.samples;

import java.util.List;

/** A sample seen in an upright mirror: left is right. Its own description stays as it was. */
public final class MirroredDeck {
  private MirroredDeck() {}

  public static SampleDeck of(SampleDeck deck) {
    List<Member> members = deck.members().stream().map(MirroredDeck::mirrored).toList();
    return new SampleDeck(
        deck.name(), deck.description(), deck.levels(), members, deck.decks(), deck.ownMix());
  }

  private static Member mirrored(Member m) {
    return new Member(
        m.key(), m.role(), m.group(), m.size(), m.material(), m.level(), mirrored(m.solid()));
  }

  /** Sections are symmetric, so that an axis turned over leaves them as they are. */
  private static Solid mirrored(Solid s) {
    Frame f = s.frame();
    Frame turned =
        new Frame(
            mirrored(f.origin()), mirrored(f.x()), mirrored(f.y()).times(-1), mirrored(f.z()));
    return new Solid(turned, s.length(), s.section(), -s.startSkew(), -s.endSkew());
  }

  private static Xyz mirrored(Xyz p) {
    return new Xyz(-p.x(), p.y(), p.z());
  }
}
