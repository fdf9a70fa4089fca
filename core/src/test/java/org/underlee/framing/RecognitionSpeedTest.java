package org.underlee.framing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.underlee.finding.NotMeasured;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;

/**
 * How long recognition takes, from bodies in memory to decks with roles. {@code
 * -Dunderlee.speed=100000} runs it with so many members and prints the times.
 */
class RecognitionSpeedTest {
  private static final int[] FACES = {
    0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0,
    4, 3, 4, 7
  };

  private static final int JOISTS = 14;

  /** Ledger, rim, wall, two posts, a row of blocking. */
  private static final int OTHERS = 5 + JOISTS - 1;

  private static final int ROUNDS = 8;

  private final List<BuildingElement> elements = new ArrayList<>();

  @Test
  void timeAndMembersGrowTogether() {
    int most = Integer.getInteger("underlee.speed", 0);
    assumeTrue(most > 0, "skipped: give -Dunderlee.speed=100000 to time recognition");
    for (int members = most / 8; members <= most; members *= 2) {
      int decks = members / (JOISTS + OTHERS);
      fill(decks);
      long best = Long.MAX_VALUE;
      long leastWork = Long.MAX_VALUE;
      Framing framing = frame();
      for (int i = 0; i < ROUNDS; i++) {
        long start = System.nanoTime();
        long worked = processorTime();
        framing = frame();
        best = Math.min(best, System.nanoTime() - start);
        leastWork = Math.min(leastWork, processorTime() - worked);
      }
      assertThat(framing.fields().count()).isEqualTo(decks);
      System.out.printf(
          Locale.ROOT,
          "%,d members, %,d decks: %.3f s, %.3f processor seconds%n",
          elements.size(),
          decks,
          best / 1e9,
          leastWork / 1e9);
    }
  }

  /** Of all threads; what other programs do on the machine has less say in it than in the time. */
  private static long processorTime() {
    return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
  }

  private Framing frame() {
    return Framer.frame(
        new ElementSource() {
          @Override
          public List<BuildingElement> elements() {
            return elements;
          }

          @Override
          public List<NotMeasured> notMeasured() {
            return List.of();
          }
        });
  }

  /** Decks in rows, each turned its own way, ten metres apart. */
  private void fill(int decks) {
    elements.clear();
    int across = (int) Math.ceil(Math.sqrt(decks));
    for (int d = 0; d < decks; d++) {
      double turn = 0.7 * d;
      Vec3 x = new Vec3(Math.cos(turn), Math.sin(turn), 0);
      Vec3 origin = new Vec3(12 * (d % across), 12 * (d / across), 0);
      deck(new Transform(origin, x, Vec3.Z.cross(x), Vec3.Z));
    }
  }

  private void deck(Transform place) {
    double width = (JOISTS - 1) * 0.4 + 0.038;
    for (int j = 0; j < JOISTS; j++) {
      double u = 0.4 * j;
      bar("IfcBeam", place, u, 0, 2.5, u + 0.038, 3, 2.684);
      if (j > 0) {
        bar("IfcMember", place, u - 0.362, 1.5, 2.5, u, 1.538, 2.684);
      }
    }
    bar("IfcBeam", place, 0, -0.038, 2.5, width, 0, 2.684);
    bar("IfcBeam", place, 0, 3, 2.5, width, 3.038, 2.684);
    bar("IfcWall", place, -1, -0.238, 0, width + 1, -0.038, 5);
    bar("IfcColumn", place, 0.2, 2.97, 0, 0.29, 3.06, 2.5);
    bar("IfcColumn", place, width - 0.3, 2.97, 0, width - 0.21, 3.06, 2.5);
  }

  private void bar(
      String ifcClass,
      Transform place,
      double x0,
      double y0,
      double z0,
      double x1,
      double y1,
      double z1) {
    double[] xyz = {
      x0, y0, z0, x1, y0, z0, x1, y1, z0, x0, y1, z0, x0, y0, z1, x1, y0, z1, x1, y1, z1, x0, y1, z1
    };
    long instance = elements.size() + 1L;
    elements.add(
        new BuildingElement(
            instance,
            "e" + instance,
            ifcClass,
            "",
            "",
            "",
            Optional.empty(),
            new Mesh(xyz, FACES).transformed(place)));
  }
}
