package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.TreeMap;
import org.assertj.core.data.Offset;

/** How much leaks in a proof, m², by cause and part: {@code edge pan-1}. */
final class LeakAreas {
  /** A tenth of a sheet's thickness along two metres of edge. */
  static final Offset<Double> STRIP = within(1e-4);

  private LeakAreas() {}

  static Map<String, Double> of(DrainProof proof) {
    Map<String, Double> leaks = new TreeMap<>();
    for (Leak l : proof.leaks()) {
      leaks.merge(l.cause().word() + " " + String.join(" ", l.parts()), l.area(), Double::sum);
    }
    return leaks;
  }

  static void assertThatTheyAre(DrainProof proof, Map<String, Double> expected) {
    Map<String, Double> found = of(proof);
    assertThat(found).containsOnlyKeys(expected.keySet());
    expected.forEach(
        (which, area) -> assertThat(found.get(which)).as(which).isCloseTo(area, STRIP));
  }
}
