package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.underlee.drainage.Leak;
import org.underlee.drainage.LeakCause;
import org.underlee.finding.Finding;
import org.underlee.kit.KitReader;
import org.underlee.layout.DryZone;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;

/** What the proof says where the drained part ends at a tripled joist in the middle of the deck. */
class DryZoneProofTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));

  /** Below the fifth to the eighth bay of the sample; J9 beside it has three plies and a strip. */
  private static Design design(String corners) {
    DryZone zone = DryZone.parse(corners);
    return DeckRun.design(
        DeckRun.survey(ROOT.resolve("samples/pine-deck/pine-deck.ifc")),
        Scope.OUTSIDE.with(Wishes.NONE.keepingDry(zone)),
        KitReader.builtIn());
  }

  @Test
  void aBayThatIsOpenBesideTheStripOfItsJoistIsOpenAndNoJointLeaks() {
    Design design = design("2,0.5 3,0.5 3,2.9 2,2.9");
    Set<String> served = Set.copyOf(design.layout().fields().get(0).bays());
    assertThat(served).containsExactlyInAnyOrder("B5", "B6", "B7", "B8");
    List<Leak> fallsThrough =
        design.proof().leaks().stream()
            .filter(l -> !served.contains(l.bay()) && l.area() > 0.01)
            .toList();
    assertThat(fallsThrough)
        .hasSizeGreaterThan(7)
        .allSatisfy(l -> assertThat(l.cause()).isIn(LeakCause.OPEN_BAY, LeakCause.BEYOND_GUTTER));
    assertThat(design.findings()).noneMatch(f -> f.rule().id().equals("joint-leaks"));
  }

  /** J9's far face is 309 mm from the zone: 12 in are 304.8. */
  @Test
  void theJoistBesideTheZoneIsToldAsSoonAsDropsSplashIn() {
    assertThat(splashed("2,0.5 3,0.5 3,2.9 2,2.9")).isEmpty();
    assertThat(splashed("2,0.5 3.01,0.5 3.01,2.9 2,2.9")).containsExactly("J9");
  }

  private static List<String> splashed(String zone) {
    return design(zone).findings().stream()
        .filter(f -> f.rule().id().equals("dry-zone-splashed"))
        .flatMap(f -> f.subjects().stream())
        .map(Finding.Subject::name)
        .toList();
  }
}
