package org.underlee.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.command.Ran.run;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The design, and what is made of it, as a shell sees them. */
class DesignVerbTest extends AtTheShell {
  @Test
  void anAssemblyWhoseMarksAreGoneIsReplacedAndStripped() throws Exception {
    Path drained = folder.resolve("drained.ifc");
    run("design", deck, "--out", drained);
    String text = Files.readString(drained);
    Path bare = file("bare.ifc", text.replaceAll("/\\* Underlee.*?\\*/\\r?\\n", ""));
    Path again = folder.resolve("again.ifc");
    assertThat(run("design", bare, "--out", again).code()).isZero();
    assertThat(Files.readString(again)).isEqualTo(text);
    Path stripped = folder.resolve("stripped.ifc");
    assertThat(run("strip", bare, "--out", stripped).code()).isZero();
    assertThat(stripped).hasSameBinaryContentAs(deck);
  }

  @Test
  void designWritesBesideTheModelAndLeavesTheModelAlone() throws Exception {
    String original = sha256(deck);
    Ran ran = run("design", deck, "--json");
    assertThat(ran.code()).isZero();
    assertThat(ran.json().get("schema").asText()).isEqualTo("underlee/design/1");
    assertThat(ran.json().get("parts")).isNotEmpty();
    assertThat(ran.err()).contains("deck.drained.ifc");
    assertThat(files()).containsOnlyKeys("deck.ifc", "deck.drained.ifc");
    assertThat(sha256(deck)).isEqualTo(original);
  }

  @ParameterizedTest
  @ValueSource(strings = {"pine-deck", "harbour-balcony", "hillside-terrace"})
  void stripGivesTheDesignersFileBack(String sample) throws Exception {
    Path model = SAMPLES.resolve(sample + "/" + sample + ".ifc");
    Path drained = folder.resolve("drained.ifc");
    Path back = folder.resolve("back.ifc");
    String original = sha256(model);
    assertThat(run("design", model, "--out", drained).code()).isZero();
    assertThat(sha256(drained)).isNotEqualTo(original);
    Ran strip = run("strip", drained, "--out", back);
    assertThat(strip.code()).isZero();
    assertThat(strip.out()).isEmpty();
    assertThat(sha256(back)).isEqualTo(original);
    assertThat(sha256(model)).isEqualTo(original);
  }

  @Test
  void designingADrainedModelGivesWhatTheOriginalGives() throws Exception {
    Path once = folder.resolve("once.ifc");
    Path twice = folder.resolve("twice.ifc");
    Ran first = run("design", deck, "--out", once, "--json");
    Ran second = run("design", once, "--out", twice, "--json");
    assertThat(second.code()).isZero();
    assertThat(sha256(twice)).isEqualTo(sha256(once));
    assertThat(second.json().get("parts")).isEqualTo(first.json().get("parts"));
  }

  /** 30 in/h asks for more outlets than 8, each with its pipe. */
  @Test
  void aTakeoffIsForTheRainThatADesignIsFor() throws Exception {
    Path bill = folder.resolve("bill.json");
    run("design", deck, "--rain", "30in/h", "--takeoff", bill);
    JsonNode heavy = run("takeoff", deck, "--rain", "30in/h", "--json").json();
    assertThat(heavy).isEqualTo(new ObjectMapper().readTree(bill.toFile()));
    assertThat(heavy).isNotEqualTo(run("takeoff", deck, "--json").json());
  }

  @Test
  void takeoffsAndPicturesAreWrittenByTheirEnding() throws Exception {
    Path csv = folder.resolve("buy.csv");
    Path json = folder.resolve("buy.json");
    Path svg = folder.resolve("plan.svg");
    Path png = folder.resolve("view.png");
    assertThat(run("takeoff", deck, "--out", csv).code()).isZero();
    assertThat(run("takeoff", deck, "--out", json).code()).isZero();
    assertThat(Files.readString(csv)).startsWith("row,item,");
    assertThat(Files.readString(json)).isEqualTo(run("takeoff", deck, "--json").out());
    assertThat(run("takeoff", deck).out()).contains("To buy");
    Ran ran = run("design", deck, "--takeoff", folder.resolve("again.csv"), "--picture", svg);
    assertThat(ran.code()).isZero();
    assertThat(Files.readString(folder.resolve("again.csv"))).isEqualTo(Files.readString(csv));
    assertThat(Files.readString(svg)).contains("<svg", "B1");
    assertThat(run("survey", deck, "--picture", png).code()).isZero();
    assertThat(new String(Files.readAllBytes(png), 1, 3, StandardCharsets.US_ASCII))
        .isEqualTo("PNG");
  }

  @Test
  void aPartIsExplainedInTheUnitsThatAreAskedForAndNothingIsWritten() throws Exception {
    Ran imperial = run("design", deck, "--explain", "F1-B1-P1", "--units", "imperial");
    assertThat(imperial.code()).isZero();
    assertThat(imperial.out()).contains("clear run of bay B1", "kit railEndGapMm: common practice");
    assertThat(imperial.out()).contains("1.00 in").doesNotContainPattern("\\d mm");
    assertThat(imperial.err()).isEmpty();
    Ran metric = run("design", deck, "--explain", "deck-1/field-1/B1/pan-1", "--units", "metric");
    assertThat(metric.out()).contains("25.4 mm").doesNotContain(" in  ");
    JsonNode part =
        run("design", deck, "--explain", "F1-B1-P1", "--json").json().at("/parts/0/dimensions");
    assertThat(part.findValuesAsText("dimension")).contains("length", "flat-width", "seat-high");
    assertThat(Files.exists(folder.resolve("deck.drained.ifc"))).isFalse();
  }

  @Test
  void aNameThatSeveralPartsShareListsThemAndAnUnknownOneNamesTheNearest() throws Exception {
    Ran several = run("design", deck, "--explain", "F1-B1-R");
    assertThat(several.out().lines()).hasSize(2).allMatch(l -> l.startsWith("F1-B1-R"));
    Ran none = run("design", deck, "--explain", "F1-B1-Q1");
    assertThat(none.code()).isEqualTo(2);
    assertThat(none.err()).contains("no part is called so").contains("F1-B1-P1");
  }

  /** A kit's own descriptions of what is bought are the kit's words, and are left as they are. */
  @ParameterizedTest
  @ValueSource(strings = {"pine-deck", "harbour-balcony", "hillside-terrace"})
  void whoAsksForFeetAndInchesSeesNoMillimetres(String sample) throws Exception {
    Path model = SAMPLES.resolve(sample).resolve(sample + ".ifc");
    Path out = folder.resolve("imperial.ifc");
    Ran ran = run("design", model, "--units", "imperial", "--checklist", "--out", out);
    String bought = ran.out().substring(ran.out().indexOf("To buy"), ran.out().indexOf("To cut"));
    assertThat(ran.out().replace(bought, "") + ran.err())
        .contains("1:96", "net-fall-low")
        .doesNotContainPattern("\\d ?mm\\b");
  }
}
