package org.underlee.samples;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.run.Design;

/** What the bill in a drained model says, and what the meshes in it add up to. */
class BillAgainstMeshesTest {
  /** {@code -Dunderlee.bill.all=true}: every sample, kit and schema; else one. */
  private static final boolean ALL = Boolean.getBoolean("underlee.bill.all");

  @TempDir Path folder;

  private final Map<Path, Design> designs = new LinkedHashMap<>();

  @Test
  void everyLineOfTheBillIsTheSumOverTheMeshesThatItCounts() throws Exception {
    assumeTrue(WebIfc.nodeAvailable(), WebIfc.SKIPPED);
    if (ALL) {
      for (SampleDeck deck : SampleDecks.all()) {
        for (Kit kit : KitReader.allBuiltIn()) {
          for (Mix.Schema schema : Mix.Schema.values()) {
            write(deck, deck.ownMix().with(schema), kit);
          }
        }
      }
    } else {
      // the other schemas are in OutputsOfManyDecksTest
      write(PineDeck.sample(), PineDeck.sample().ownMix(), KitReader.builtIn());
    }
    BillWitness.read(List.copyOf(designs.keySet()))
        .forEach((file, read) -> MeshSums.require(designs.get(file), read));
  }

  private void write(SampleDeck deck, Mix mix, Kit kit) throws Exception {
    Design design = Priced.design(deck, mix, kit);
    // membranes do not fit into every deck
    if (!design.layout().parts().isEmpty()) {
      Path file = folder.resolve(designs.size() + "-" + deck.name() + ".ifc");
      designs.put(Files.write(file, design.written().bytes()), design);
    }
  }
}
