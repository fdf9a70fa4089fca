package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.ids.IdsCheck;
import org.underlee.ids.IdsReport;
import org.underlee.kit.KitReader;
import org.underlee.run.Design;
import org.underlee.run.SchemaChecked;
import org.underlee.schema.Schema;
import org.underlee.step.StepFile;

/**
 * Random decks in three schemas, with a priced bill: what is written follows the schema with all of
 * its rules, keeps the promise of our IDS file, and is read by an independent reader with the right
 * bodies, which add up to the bill.
 */
class OutputsOfManyDecksTest {
  /** {@code -Dunderlee.outputs.seeds=500} for the published figure. */
  private static final int SEEDS = Integer.getInteger("underlee.outputs.seeds", 2);

  /** To go through them in parts. */
  private static final int FIRST = Integer.getInteger("underlee.outputs.first", 0);

  /** Models that the other reader is given in one run. */
  private static final int AT_ONCE = 60;

  @TempDir Path folder;

  private final Map<Path, Design> unread = new LinkedHashMap<>();
  private final List<String> wrong = new ArrayList<>();
  private int laidOut;
  private long instances;
  private long parts;
  private long lines;

  @Test
  void everyOutputIsSoundByTheSchemaByTheIdsFileAndInAnotherReader() throws Exception {
    assumeTrue(WebIfc.nodeAvailable(), WebIfc.SKIPPED);
    for (int seed = FIRST; seed < FIRST + SEEDS; seed++) {
      for (Mix.Schema schema : Mix.Schema.values()) {
        check(SampleDecks.random(seed), Mix.random(seed).with(schema));
      }
      if (unread.size() >= AT_ONCE) {
        readByAnother();
      }
    }
    readByAnother();
    assertThat(wrong).isEmpty();
    // A deck that nothing fits into is written with nothing added: it may be rare, and is no proof.
    assertThat(laidOut).isGreaterThanOrEqualTo(SEEDS * Mix.Schema.values().length * 9 / 10);
  }

  private void check(SampleDeck deck, Mix mix) throws Exception {
    Design design = Priced.design(deck, mix, KitReader.builtIn());
    if (design.layout().parts().isEmpty()) {
      return;
    }
    Schema schema = OutputsFollowTheSchemaTest.schema(mix.schema());
    StepFile file = StepFile.of(design.written().bytes(), deck.name());
    SchemaChecked checked = SchemaChecked.of(file, schema, true);
    IdsReport promised = IdsCheck.byOwn(schema, file);
    checked.report().findings().forEach(f -> wrong.add(deck.name() + " " + mix + ": " + f));
    if (!promised.passed()) {
      wrong.add(deck.name() + " " + mix + ": " + promised.findings());
    }
    laidOut++;
    instances += checked.report().instances();
    parts += design.layout().parts().size();
    lines += design.takeoff().lines().size();
    Path written = folder.resolve(laidOut + "-" + deck.name() + ".ifc");
    unread.put(Files.write(written, design.written().bytes()), design);
  }

  private void readByAnother() throws Exception {
    for (var read : BillWitness.read(List.copyOf(unread.keySet())).entrySet()) {
      try {
        MeshSums.require(unread.get(read.getKey()), read.getValue());
      } catch (AssertionError e) {
        wrong.add(read.getKey().getFileName() + ": " + e.getMessage());
      }
      Files.delete(read.getKey());
    }
    unread.clear();
    System.out.printf(
        Locale.ROOT,
        "%d models with an assembly so far, %d instances, %d parts, %d lines of bills; wrong: %s%n",
        laidOut,
        instances,
        parts,
        lines,
        wrong);
  }
}
