package org.underlee.report.packet;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.underlee.kit.KitReader;
import org.underlee.layout.Part;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.takeoff.Takeoff;
import org.underlee.units.Lengths.UnitSystem;

class CuttingSheetTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));

  /** Steel is sold in sheets, from whose width several strips are ripped. */
  @Test
  void everyPieceIsNamedOnceEvenWhereSeveralAreRippedFromOneCut() {
    Design design =
        DeckRun.design(
            DeckRun.survey(ROOT.resolve("samples/pine-deck/pine-deck.ifc")),
            Scope.OUTSIDE,
            KitReader.named("galvanised-steel"));
    assertThat(design.takeoff().stock()).anyMatch(Takeoff.Stock::isRipped);
    List<String> wanted =
        design.layout().parts().stream()
            .filter(p -> design.takeoff().bought().containsKey(p.item()))
            .map(Part::label)
            .toList();
    List<String> named = new ArrayList<>();
    Set<String> labels = new HashSet<>(wanted);
    for (String row : inOrder(design)) {
      Arrays.stream(row.split("[\\s\u00a0,(|)]+")).filter(labels::contains).forEach(named::add);
    }
    assertThat(named).containsExactlyInAnyOrderElementsOf(wanted);
    assertThat(inOrder(design)).anyMatch(r -> r.contains("|") && r.contains("\u00d7"));
  }

  /** What the tables say is cut from each stick. */
  private static List<String> inOrder(Design design) {
    int column = 2;
    return PacketBuilder.of(design, new Writing(UnitSystem.METRIC, "en")).sheets().stream()
        .filter(s -> s.id().equals("cutting"))
        .flatMap(s -> s.blocks().stream())
        .filter(Block.Table.class::isInstance)
        .flatMap(b -> ((Block.Table) b).rows().stream())
        .map(r -> r.get(column))
        .toList();
  }
}
