package org.underlee.bay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.framing.TimberDeck.D;
import static org.underlee.framing.TimberDeck.L;
import static org.underlee.framing.TimberDeck.W;
import static org.underlee.framing.TimberDeck.Z;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Member;
import org.underlee.framing.Role;
import org.underlee.framing.TimberDeck;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/** One deck is read the same wherever it stands, whichever way it faces, however it is written. */
class SameDeckTest {
  /**
   * A bit of everything: plies, a sister over part of the length, a header, blocking, a strut, a
   * packed pair, a drop beam on posts, crossings.
   */
  private static TimberDeck everything() {
    return TimberDeck.plain(7)
        .joist("second ply", 0.4 + W, 0, L)
        .joist("sister", 2.4 - W, 0.813, 2.217)
        .joist("pair", 0.8 + 2 * W + 0.003, 0, L)
        .bar("IfcMember", "packer", 0.8 + W, 0.5, Z, 0.8 + 2 * W + 0.003, 0.8, Z + D)
        .pipe(
            "IfcMember",
            "strut",
            new Vec3(W + 0.01, 1.1, Z + 0.02),
            new Vec3(0.39, 1.1, Z + D - 0.02),
            0.03)
        .without("j5")
        .joist("tail", 1.6, 1.5, L)
        .bar("IfcBeam", "header", 1.2 + W, 1.5 - W, Z, 2.0, 1.5, Z + D)
        .bar("IfcMember", "block", 0.8 + 2 * W + W + 0.003, 1.8, Z, 1.2, 1.8 + W, Z + D)
        .bar("IfcMember", "low block", 2.0 + W, 0.7, Z + 0.08, 2.4, 0.7 + W, Z + D)
        .bar("IfcBeam", "carrier", -0.1, 2.3, Z - D, 2.6, 2.3 + W, Z)
        .bar("IfcColumn", "foot 1", 0.2, 2.27, 0, 0.29, 2.36, Z - D)
        .bar("IfcColumn", "foot 2", 2.1, 2.27, 0, 2.19, 2.36, Z - D)
        .pipe("IfcPipeSegment", "pipe", new Vec3(0.2, 0.6, 0), new Vec3(0.2, 0.6, 3.5), 0.11)
        .pipe("IfcFlowSegment", "conduit", new Vec3(1, 0.2, 2.6), new Vec3(1, 1.4, 2.6), 0.03)
        .bar("IfcColumn", "mast", 2.2, 1.2, 0, 2.3, 1.3, 4);
  }

  @Test
  void theDeckOfThisTestHasABitOfEverything() {
    String all = String.join("\n", normal(everything()));
    assertThat(all)
        .contains("HEADER[header]", "DROP_BEAM[carrier]", "posts[foot 1, foot 2]")
        .contains("j2+second ply", "trimmers[j4, j6]", "block at", "low block at")
        .contains("pipe THROUGH", "conduit ALONG", "mast THROUGH")
        .contains("strut is BRIDGING", "packer is PACKER", "sister is JOIST", "steps at");
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void turnedAndMovedItIsTheSame(long seed) {
    Random random = new Random(seed);
    assertThat(normal(everything().moved(anywhere(random)))).isEqualTo(normal(everything()));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void mirroredItIsTheSame(long seed) {
    Random random = new Random(seed);
    Transform mirror = new Transform(Vec3.ZERO, Vec3.X.negated(), Vec3.Y, Vec3.Z);
    assertThat(normal(everything().moved(anywhere(random).after(mirror))))
        .isEqualTo(normal(everything()));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void inAnyOrderOfTheFileAndOfEachSurfaceItIsTheSame(long seed) {
    assertThat(normal(everything().mixed(new Random(seed)))).isEqualTo(normal(everything()));
  }

  @Test
  void aMemberLessIsNoticed() {
    assertThat(normal(everything().without("low block"))).isNotEqualTo(normal(everything()));
  }

  private static Transform anywhere(Random random) {
    double turn = random.nextDouble() * 2 * Math.PI;
    Vec3 x = new Vec3(Math.cos(turn), Math.sin(turn), 0);
    Vec3 origin = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
    // to a site's length from the origin, and to the far side of the earth
    double reach = random.nextBoolean() ? 500 : 5e6;
    return new Transform(origin.times(reach), x, Vec3.Z.cross(x), Vec3.Z);
  }

  /** What was read, without what depends on the place and on the order of the file. */
  private static List<String> normal(TimberDeck deck) {
    List<String> out = new ArrayList<>();
    Framing framing = deck.frame();
    framing.roles().forEach(r -> out.add(r.member().id() + " is " + r.role()));
    for (FieldBays own : deck.fieldBays()) {
      Field f = own.field();
      out.add("falls " + f.fallWhy());
      for (Role role : Role.values()) {
        out.add(role + set(f.supports(role)));
      }
      out.add("posts" + set(f.posts()));
      out.add("trimmers" + set(f.trimmers()));
      f.lines().forEach(l -> out.add("line " + name(l) + numbers(l.width(), l.depth())));
      own.bays().forEach(b -> out.add(bay(b)));
    }
    return out.stream().sorted().toList();
  }

  private static String bay(Bay b) {
    List<String> sides = Stream.of(name(b.left()), name(b.right())).sorted().toList();
    StringBuilder text = new StringBuilder("bay " + sides);
    text.append(numbers(b.clearWidthHigh(), b.clearWidthLow(), b.stretch().from(), b.length()));
    b.clearWidths().stream()
        .filter(w -> w.at() > 0 && w.at() < b.length() - 1e-4)
        .forEach(w -> text.append("steps at").append(numbers(w.at(), w.width())));
    b.bridging().forEach(k -> text.append(k.member().id()).append(" at").append(block(k)));
    b.blocking().forEach(k -> text.append(k.member().id()).append(" at").append(block(k)));
    for (Crossing c : b.crossings()) {
      double offMiddle = Math.abs(c.across() - b.clearWidthAt(c.stretch().middle()) / 2);
      text.append(c.element().globalId()).append(' ').append(c.way());
      text.append(numbers(c.at(), offMiddle, c.size())).append(c.round());
    }
    return text.toString();
  }

  private static String block(Block k) {
    return numbers(k.at(), k.thickness(), k.bottom());
  }

  private static String name(JoistLine line) {
    return String.join("+", line.plies().stream().map(Member::id).sorted().toList());
  }

  private static String set(Collection<Member> members) {
    return members.stream().map(Member::id).sorted().toList().toString();
  }

  /** To a tenth of a millimetre, zero without a sign. */
  private static String numbers(double... metres) {
    StringBuilder text = new StringBuilder();
    for (double m : metres) {
      text.append(String.format(Locale.ROOT, " %.4f", Math.round(m * 1e4) / 1e4 + 0.0));
    }
    return text + " ";
  }
}
