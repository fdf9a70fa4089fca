package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.underlee.ids.IdsCheck;
import org.underlee.ids.IdsReport;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.schema.Schema;
import org.underlee.step.StepFile;

/** What the program's own IDS file promises is in every output, and missed where it is not. */
class OutputsKeepTheirPromiseTest {
  private static String drained(SampleDeck deck, Mix mix) {
    byte[] bytes =
        DeckRun.design(
                DeckRun.survey(IfcEmitter.emit(deck, mix), "deck.ifc"),
                Scope.OUTSIDE,
                KitReader.builtIn())
            .written()
            .bytes();
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  private static IdsReport check(String model, Schema schema) {
    StepFile file = StepFile.of(model.getBytes(StandardCharsets.ISO_8859_1), "deck.ifc");
    return IdsCheck.byOwn(schema, file);
  }

  @Test
  void everySampleKeepsThePromiseInThreeSchemas() {
    for (Mix.Schema schema : Mix.Schema.values()) {
      Schema read = OutputsFollowTheSchemaTest.schema(schema);
      for (SampleDeck deck : SampleDecks.all()) {
        IdsReport report = check(drained(deck, deck.ownMix().with(schema)), read);
        assertThat(report.findings())
            .filteredOn(f -> !f.rule().id().equals("ids-other-version"))
            .as("%s %s", deck.name(), schema)
            .isEmpty();
        assertThat(report.outcomes()).hasSizeGreaterThan(5);
        assertThat(report.outcomes().get(1).applicable()).isGreaterThan(20);
      }
    }
  }

  @Test
  void eachOfTwentyMutatedOutputsFails() {
    String sound = drained(SampleDecks.all().get(0), Mix.PLAIN.with(Mix.Schema.IFC4));
    Schema schema = OutputsFollowTheSchemaTest.schema(Mix.Schema.IFC4);
    assertThat(check(sound, schema).passed()).isTrue();
    Map<String, String> mutations = new LinkedHashMap<>();
    mutations.put("'under-deck drainage'", "'drainage'");
    mutations.put("'Under-deck drainage of deck-1/field-1'", "\\$");
    mutations.put("'deck-1/field-1',\\.SITE\\.", "'field one',.SITE.");
    mutations.put("'Underlee_Layout'", "'Underlee_Lay'");
    mutations.put("IFCPROPERTYSINGLEVALUE\\('Kit',", "IFCPROPERTYSINGLEVALUE('Kitt',");
    mutations.put("'KitVersion',\\$,IFCLABEL\\('[^']*'\\)", "'KitVersion',\\$,IFCLABEL('')");
    mutations.put("'SeatHigh',\\$,IFCLENGTHMEASURE", "'SeatHigh',\\$,IFCREAL");
    mutations.put("'Fall',\\$,IFCRATIOMEASURE\\(", "'Fall',\\$,IFCRATIOMEASURE(-");
    mutations.put("'Run',\\$,IFCLENGTHMEASURE\\([^)]*\\)", "'Run',\\$,IFCLENGTHMEASURE(0.)");
    mutations.put("'LowEnd',\\$,IFCTEXT\\('[^']*'\\)", "'LowEnd',\\$,\\$");
    mutations.put("'FramingHash',\\$,IFCLABEL\\('..", "'FramingHash',\\$,IFCLABEL('XY");
    mutations.put("'Label',\\$,IFCLABEL\\('F1-", "'Label',\\$,IFCLABEL('G1-");
    mutations.put("'Why',\\$,IFCTEXT\\('[^']*'\\)", "'Why',\\$,IFCTEXT('')");
    mutations.put("'Bay',\\$,IFCLABEL\\('B1'\\)", "'Bay',\\$,IFCLABEL('first')");
    mutations.put("'LengthCut',\\$,IFCLENGTHMEASURE\\(", "'LengthCut',\\$,IFCLENGTHMEASURE(-");
    mutations.put("'WidthCut',\\$,IFCLENGTHMEASURE", "'WidthCut',\\$,IFCRATIOMEASURE");
    mutations.put("'LoadBearing',\\$,IFCBOOLEAN\\(\\.F\\.\\)", "'LoadBearing',\\$,IFCBOOLEAN(.T.)");
    mutations.put("\\.SHEET\\.", ".CURTAIN_PANEL.");
    mutations.put("'Under-deck drainage: bill of quantities'", "'Under-deck drainage: bill'");
    mutations.put(
        "IFCRELASSIGNSTOGROUP\\('([^']*)',([^,]*),([^,]*),([^,]*),\\(",
        "IFCRELASSIGNSTOPRODUCT('$1',$2,$3,$4,(");
    mutations.put("IFCRELASSOCIATESMATERIAL", "IFCRELASSOCIATESDOCUMENT");
    assertThat(mutations).hasSizeGreaterThanOrEqualTo(20);
    int block = sound.indexOf("Underlee begins");
    mutations.forEach(
        (right, wrong) -> {
          String mutated =
              sound.substring(0, block) + sound.substring(block).replaceAll(right, wrong);
          assertThat(mutated).as(right).isNotEqualTo(sound);
          assertThat(check(mutated, schema).passed()).as(right + " → " + wrong).isFalse();
        });
  }
}
