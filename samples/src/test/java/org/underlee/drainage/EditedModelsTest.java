package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.Checked;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.SurveyRequest;
import org.underlee.samples.IfcEmitter;
import org.underlee.samples.Mix;
import org.underlee.samples.SampleDeck;
import org.underlee.samples.SampleDecks;

/** A drained model that someone has edited is judged by what is in it. */
class EditedModelsTest {
  private static final SampleDeck PINE = SampleDecks.all().get(0);
  private static final SampleDeck HARBOUR = SampleDecks.all().get(1);

  private static Design design(SampleDeck deck) {
    return DeckRun.design(
        DeckRun.survey(IfcEmitter.emit(deck, deck.ownMix()), "deck.ifc"),
        Scope.OUTSIDE,
        KitReader.builtIn());
  }

  private static String drained(SampleDeck deck) {
    return new String(design(deck).written().bytes(), StandardCharsets.ISO_8859_1);
  }

  private static Checked check(String text) {
    return DeckRun.check(
        text.getBytes(StandardCharsets.ISO_8859_1),
        "drained.ifc",
        SurveyRequest.PLAIN,
        Optional.empty());
  }

  static List<SampleDeck> samples() {
    return SampleDecks.all();
  }

  @ParameterizedTest
  @MethodSource("samples")
  void aModelAsWrittenIsProvedAsItsLayoutIs(SampleDeck deck) {
    Design design = design(deck);
    Checked checked = check(new String(design.written().bytes(), StandardCharsets.ISO_8859_1));
    assertThat(checked.proof().area()).isCloseTo(design.proof().area(), within(1e-3));
    assertThat(checked.proof().dryFraction()).isCloseTo(design.proof().dryFraction(), within(5e-4));
    assertThat(checked.proof().outlets()).hasSameSizeAs(design.proof().outlets());
    assertThat(checked.checks().findings().stream().map(Finding::message))
        .containsExactlyElementsOf(
            design.checks().findings().stream().map(Finding::message).toList());
  }

  private static boolean tells(Checked checked, String rule) {
    return checked.checks().findings().stream().anyMatch(f -> f.rule().id().equals(rule));
  }

  /** The instance with the part's id as its tag. */
  private static String line(String text, String tag) {
    Matcher m = Pattern.compile("(?m)^#[0-9]+=[^\\n]*'" + tag + "'[^\\n]*$").matcher(text);
    assertThat(m.find()).as("a line with %s", tag).isTrue();
    return m.group();
  }

  /** The element is taken out, and out of every list that it is in. */
  private static String without(String text, String tag) {
    String line = line(text, tag);
    String id = line.substring(0, line.indexOf('='));
    List<String> kept = new ArrayList<>();
    for (String l : text.split("\n", -1)) {
      if (!l.equals(line)) {
        boolean only = Pattern.compile("\\(" + id + "\\)|," + id + "[,)]\\s*;?$").matcher(l).find();
        String rest = l.replaceAll(id + "(?![0-9]),", "").replaceAll("," + id + "(?![0-9])", "");
        boolean names = Pattern.compile(id + "(?![0-9])").matcher(rest).find();
        if (!names || !only) {
          kept.add(names ? "" : rest);
        }
      }
    }
    return String.join("\n", kept);
  }

  /** The part's placement gets another point, or another direction of its axis. */
  private static String placed(String text, String tag, String attribute, String value) {
    String line = line(text, tag);
    Matcher refs = Pattern.compile("#([0-9]+)").matcher(line.substring(line.indexOf('(')));
    String result = text;
    while (refs.find()) {
      String placement = instance(result, refs.group(1));
      if (placement.contains("IFCLOCALPLACEMENT")) {
        Matcher in = Pattern.compile("#([0-9]+)\\);").matcher(placement);
        assertThat(in.find()).isTrue();
        String axis = instance(result, in.group(1));
        Matcher a =
            Pattern.compile("(#[0-9]+=IFCAXIS2PLACEMENT3D)\\((#[0-9]+),([^,]*),([^,]*)\\);")
                .matcher(axis);
        assertThat(a.find()).isTrue();
        String point = instance(result, a.group(2).substring(1));
        String changed =
            attribute.equals("point")
                ? a.group(1)
                    + "(#900001,"
                    + a.group(3)
                    + ","
                    + a.group(4)
                    + ");\n"
                    + moved(point, value)
                : a.group(1) + "(" + a.group(2) + ",$,$);";
        return result.replace(axis, changed);
      }
    }
    throw new AssertionError("no placement of " + tag);
  }

  private static String moved(String point, String by) {
    Matcher m = Pattern.compile("\\(\\(([^,]+),([^,]+),([^,]+)\\)\\)").matcher(point);
    assertThat(m.find()).isTrue();
    double z = Double.parseDouble(m.group(3)) + Double.parseDouble(by);
    return "#900001=IFCCARTESIANPOINT((" + m.group(1) + "," + m.group(2) + "," + z + "));";
  }

  private static String instance(String text, String id) {
    Matcher m = Pattern.compile("(?m)^#" + id + "=[^\\n]*$").matcher(text);
    assertThat(m.find()).as("#%s", id).isTrue();
    return m.group();
  }

  private static double area(Checked checked, LeakCause cause) {
    return checked.proof().leaks().stream()
        .filter(l -> l.cause() == cause)
        .mapToDouble(Leak::area)
        .sum();
  }

  @Test
  void aStripThatWasDeletedIsMissed() {
    String text = drained(PINE);
    Matcher strip = Pattern.compile("'(deck-1/field-1/J[0-9]+/ply-strip-1)'").matcher(text);
    assertThat(strip.find()).isTrue();
    Checked before = check(text);
    Checked after = check(without(text, strip.group(1)));
    assertThat(after.parts()).hasSize(before.parts().size() - 1);
    assertThat(area(after, LeakCause.PLY_SEAM))
        .isGreaterThan(area(before, LeakCause.PLY_SEAM) + 0.05);
    assertThat(tells(before, "ply-seam-open")).isFalse();
    assertThat(tells(after, "ply-seam-open")).isTrue();
  }

  @Test
  void aPanThatWasTurnedLevelHasNoNetFallLeft() {
    String text = drained(HARBOUR);
    assertThat(tells(check(text), "net-fall-too-low")).isFalse();
    Checked after = check(placed(text, "deck-1/field-1/B2/pan-1", "axis", ""));
    assertThat(tells(after, "net-fall-too-low")).isTrue();
  }

  @Test
  void anAssemblyWhosePartsHaveOtherNamesIsProvedAndToldToLackTheOtherChecks() {
    String text = drained(HARBOUR).replace("deck-1/field-1/B2/pan-1", "deck-1/field-1/B2/pan-9");
    Checked checked = check(text);
    assertThat(tells(checked, "design-checks-left-out")).isTrue();
    assertThat(checked.proof().dryFraction()).isCloseTo(1, within(0.2));
  }

  @Test
  void aPanThatWasMovedDownIsFound() {
    String text = drained(HARBOUR);
    Checked before = check(text);
    Checked after = check(placed(text, "deck-1/field-1/B2/pan-1", "point", "-50."));
    assertThat(after.proof().dryFraction()).isNotEqualTo(before.proof().dryFraction());
  }

  @Test
  void aDownspoutThatIsGoneIsFound() {
    String text = drained(HARBOUR);
    Checked after = check(without(text, "deck-1/field-1/downspout-1"));
    assertThat(area(after, LeakCause.NO_DOWNSPOUT)).isGreaterThan(6);
    assertThat(after.findings()).anyMatch(f -> f.rule().equals(DrainageRules.NO_WAY_DOWN));
  }

  @Test
  void aModelThatAnotherProgramSavedWithoutTheMarksIsCheckedAllTheSame() {
    String text = drained(PINE);
    String saved = text.replaceAll("/\\* Underlee [^*]*\\*/", "");
    assertThat(saved).isNotEqualTo(text);
    DrainProof proof = check(saved).proof();
    assertThat(proof.dryFraction()).isCloseTo(check(text).proof().dryFraction(), within(1e-9));
    assertThat(proof.leaks()).hasSameSizeAs(check(text).proof().leaks());
  }

  @Test
  void aModelWithoutAnAssemblyIsRefused() {
    String plain = new String(IfcEmitter.emit(HARBOUR, Mix.PLAIN), StandardCharsets.ISO_8859_1);
    assertThatThrownBy(() -> check(plain))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no assembly of ours");
  }
}
