package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.underlee.check.OutletRatings;
import org.underlee.layout.Part;
import org.underlee.run.OutletsRated;
import org.underlee.units.Lengths.UnitSystem;

/** What a person reads of the water of a deck. */
class WaterTablesTest {
  private static final Path SAMPLE =
      Path.of(
          System.getProperty("underlee.root", "../.."),
          "samples/hillside-terrace/hillside-terrace.ifc");

  private static Result result;
  private static List<Table> tables;

  @BeforeAll
  static void layOut() throws InterruptedException {
    Screen screen = new Screen();
    try (Session session = new Session(screen)) {
      session.open(SAMPLE, Decisions.FIRST);
      screen.runUntilWhole(session);
      result = session.result().get().orElseThrow();
    }
    tables = WaterTables.of(result, result.design().orElseThrow(), UnitSystem.METRIC);
  }

  private static Table named(String name) {
    return tables.stream().filter(t -> t.name().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void everyMethodIsShownWithFlowAndCapacityAndTheOneThatDecidesIsTheHardestUsed() {
    List<OutletRatings> rated =
        OutletsRated.of(
            result.design().orElseThrow(), result.decisions().wishes(), result.decisions().storm());
    assertThat(rated).isNotEmpty();
    Table table = named(WaterTables.RATED);
    assertThat(table.lines()).hasSize(rated.stream().mapToInt(o -> o.ratings().size()).sum());
    assertThat(table.lines())
        .allSatisfy(
            l -> {
              assertThat(l.cells().get(1)).endsWith("L/s");
              assertThat(l.cells().get(2)).endsWith("L/s");
              assertThat(l.cells().get(3)).endsWith(" %");
            });
    Set<String> parts =
        table.lines().stream().map(l -> l.cells().get(0)).collect(Collectors.toSet());
    for (String part : parts) {
      List<Table.Line> methods =
          table.lines().stream().filter(l -> l.cells().get(0).equals(part)).toList();
      List<Table.Line> deciding =
          methods.stream().filter(l -> l.cells().get(5).startsWith("yes")).toList();
      assertThat(deciding).as(part).hasSize(1);
      assertThat(methods.stream().filter(l -> l.cells().get(5).isEmpty()))
          .allMatch(l -> share(l) <= share(deciding.get(0)));
    }
  }

  private static int share(Table.Line line) {
    return Integer.parseInt(line.cells().get(3).replace(" %", ""));
  }

  @Test
  void outletsAreCalledByWhatIsWrittenOnThem() {
    Set<String> labels =
        result.layout().parts().stream().map(Part::label).collect(Collectors.toSet());
    assertThat(named(WaterTables.OUTLETS).lines())
        .isNotEmpty()
        .allMatch(l -> labels.contains(l.cells().get(0)));
    assertThat(named(WaterTables.BLOCKED).lines())
        .isNotEmpty()
        .allMatch(l -> labels.contains(l.cells().get(0)) && labels.contains(l.cells().get(1)));
  }

  @Test
  void noIdOfAFileIsInAnyTable() {
    List<Table> all = new ArrayList<>(tables);
    all.addAll(Table.takeoff(result, result.design().orElseThrow(), UnitSystem.METRIC));
    assertThat(
            all.stream()
                .flatMap(t -> t.lines().stream())
                .flatMap(l -> l.cells().stream())
                .filter(c -> c.matches(".*(deck-\\d|field-\\d|pan-sheet|side-rail).*")))
        .isEmpty();
  }
}
