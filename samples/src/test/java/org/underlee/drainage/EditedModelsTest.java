package org.underlee.drainage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.bay.FieldBays;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.geom.Mesh;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.kit.KitReader;
import org.underlee.layout.PartKind;
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
  private static final String PAN = "deck-1/field-1/B2/pan-1";

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
    Checked after = check(EditedText.without(text, strip.group(1)));
    assertThat(after.parts()).hasSize(before.parts().size() - 1);
    assertThat(area(after, LeakCause.PLY_SEAM))
        .isGreaterThan(area(before, LeakCause.PLY_SEAM) + 0.05);
    assertThat(tells(before, "ply-seam-open")).isFalse();
    assertThat(tells(after, "ply-seam-open")).isTrue();
  }

  @Test
  void aPanThatWasTurnedLevelHasNoNetFallLeft() {
    String text = drained(HARBOUR);
    Checked before = check(text);
    assertThat(tells(before, "net-fall-too-low")).isFalse();
    assertThat(before.proof().flat()).isEmpty();
    Checked after = check(EditedText.placed(text, PAN, Vec3.ZERO, Optional.of(Vec3.Z)));
    assertThat(tells(after, "net-fall-too-low")).isTrue();
    assertThat(after.proof().flat()).containsExactly(PAN);
  }

  @Test
  void anAssemblyWhosePartsHaveOtherNamesIsProvedAndToldToLackTheOtherChecks() {
    String text = drained(HARBOUR).replace("deck-1/field-1/B2/pan-1", "deck-1/field-1/B2/pan-9");
    Checked checked = check(text);
    assertThat(tells(checked, "design-checks-left-out")).isTrue();
    assertThat(checked.proof().dryFraction()).isCloseTo(1, within(0.2));
  }

  /**
   * By hand, from the kit's values: the pan's edge is 3 mm (panSideGapMm) off the joist, over a
   * ledge that reaches 25 mm in (railLedgeMm). Moved 50 mm along the gutter it is at 53 mm, and
   * rain falls through the 28 mm between, from the head rail's lip (headRailLipMm, 50 mm) to the
   * gutter; what the lip takes of that strip runs off it into the same gap.
   */
  @Test
  void aPanThatWasMoved50MillimetresLeaksThroughTheGapThatItLeavesByHandCalculation() {
    Design design = design(HARBOUR);
    String text = new String(design.written().bytes(), StandardCharsets.ISO_8859_1);
    FieldBays bays = design.survey().bays().get(0);
    Transform frame = bays.field().frame();
    Checked before = check(text);
    Checked after = check(EditedText.placed(text, PAN, frame.x().times(50), Optional.empty()));
    double length = gutterBack(design, frame) - 0.050;
    Leak gap = leak(after, LeakCause.GAP);
    assertThat(leaks(before, "B2")).allMatch(l -> l.area() < 1e-4);
    assertThat(gap.bay()).isEqualTo("B2");
    assertThat(gap.area()).isCloseTo(0.028 * length, within(2e-5));
    assertThat(gap.litresPerHour(100)).isCloseTo(2.8 * length, within(2e-3));
    double ledgeEnd = bays.bays().get(1).left().centre(0) + 0.030 + 0.025;
    Vec3 at = frame.toLocal(gap.at());
    assertThat(at.x()).isBetween(ledgeEnd, ledgeEnd + 0.028);
    assertThat(at.y()).isBetween(0.050, 0.050 + length);
    assertThat(offTheLip(after).area()).isCloseTo(0.028 * 0.050, within(2e-5));
    double lost = before.proof().drained() - after.proof().drained();
    assertThat(lost).isCloseTo(0.028 * (length + 0.050), within(1e-3));
    assertThat(after.findings())
        .filteredOn(f -> f.rule().equals(DrainageRules.LEAK))
        .anyMatch(f -> f.message().contains("rain falls through a gap between parts"));
  }

  /** The gutter's edge at the house side, in the frame of the field. */
  private static double gutterBack(Design design, Transform frame) {
    Mesh gutter =
        design.layout().parts().stream()
            .filter(p -> p.kind() == PartKind.GUTTER)
            .findFirst()
            .orElseThrow()
            .mesh();
    return IntStream.range(0, gutter.vertexCount())
        .mapToDouble(i -> frame.toLocal(gutter.vertex(i)).y())
        .min()
        .orElseThrow();
  }

  private static List<Leak> leaks(Checked checked, String bay) {
    return checked.proof().leaks().stream().filter(l -> l.bay().equals(bay)).toList();
  }

  private static Leak leak(Checked checked, LeakCause cause) {
    List<Leak> all = checked.proof().leaks().stream().filter(l -> l.cause() == cause).toList();
    assertThat(all).hasSize(1);
    return all.get(0);
  }

  private static Leak offTheLip(Checked checked) {
    return leaks(checked, "B2").stream()
        .filter(l -> l.parts().equals(List.of("deck-1/field-1/B2/head-rail-1")))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aDownspoutThatIsGoneIsFound() {
    String text = drained(HARBOUR);
    Checked after = check(EditedText.without(text, "deck-1/field-1/downspout-1"));
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
