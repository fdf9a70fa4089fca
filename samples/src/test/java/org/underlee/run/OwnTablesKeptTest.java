package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.underlee.drainage.flow.RainData;
import org.underlee.finding.Finding;
import org.underlee.kit.KitReader;
import org.underlee.layout.OwnTables;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDecks;
import org.underlee.step.StepFile;

/** The user's own table of downspouts decides, and goes with the model. */
class OwnTablesKeptTest {
  private static final byte[] MODEL = IfcEmitter.emit(SampleDecks.all().get(1), Mix.PLAIN);
  private static final Survey DECK = DeckRun.survey(MODEL, "harbour.ifc");

  /** A table with one entry, which every downspout of the kit is read at. */
  private static OwnTables table(double gpm) {
    return new OwnTables(
        "mine.json",
        """
        {"schema": "underlee/own-capacities/1", "shownOnly": [], "tables": [
          {"id": "mine", "use": "round downspout", "code": "Our county", "edition": "2024",
           "table": "Table 7", "unit": "gpm", "source": "the printed code",
           "rows": [{"sizeInches": 1, "fallInchesPerFoot": 0, "capacity": %s}]}]}
        """
            .formatted(gpm));
  }

  private static Design design(Wishes wishes) {
    return DeckRun.design(
        DECK,
        new Scope(Optional.empty(), Optional.empty(), wishes),
        KitReader.builtIn(),
        RainData.builtIn().service(RainData.ANYWHERE));
  }

  private static long outlets(Design design) {
    return design.layout().parts().stream().filter(p -> p.kind() == PartKind.OUTLET).count();
  }

  private static List<String> told(List<Finding> findings) {
    return findings.stream()
        .filter(f -> f.rule().id().equals("rated-by-own-tables"))
        .map(f -> f.message())
        .toList();
  }

  /** 4 gpm are 385 square feet at 1 in/h (Flows.GPM), which is 48 square feet in 8 in/h. */
  @Test
  void aHarderTableAsksForMoreOutlets() {
    Design plain = design(Wishes.NONE);
    Design hard = design(Wishes.NONE.ratedBy(table(4)));
    assertThat(outlets(hard)).isGreaterThan(outlets(plain));
    assertThat(told(plain.findings())).isEmpty();
    assertThat(told(hard.findings()))
        .isNotEmpty()
        .allMatch(m -> m.contains("downspout is Our county 2024, Table 7 (your own table)"));
    assertThat(outlets(design(Wishes.NONE.ratedBy(table(4000))))).isEqualTo(outlets(plain));
  }

  @Test
  void theModelKeepsItSoThatTheCheckAndANewExportGoByIt() {
    Design hard = design(Wishes.NONE.ratedBy(table(4)));
    Checked checked =
        DeckRun.check(hard.written().bytes(), "drained.ifc", SurveyRequest.PLAIN, Optional.empty());
    assertThat(checked.findings()).noneMatch(f -> f.rule().id().equals("design-checks-left-out"));
    assertThat(told(checked.findings())).isEqualTo(told(hard.findings()));
    Resynced again =
        Resync.of(
            StepFile.of(MODEL, "new.ifc"),
            StepFile.of(hard.written().bytes(), "old.ifc"),
            List.of(),
            Optional.empty(),
            Optional.empty());
    assertThat(outlets(again.design())).isEqualTo(outlets(hard));
    assertThat(again.decisions())
        .anyMatch(
            d ->
                d.name().equals("capacity tables") && d.value().equals("Our county 2024, Table 7"));
  }
}
