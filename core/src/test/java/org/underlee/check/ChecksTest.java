package org.underlee.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.underlee.units.Lengths.UnitSystem.IMPERIAL;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.underlee.finding.Finding;
import org.underlee.finding.Rule;

/** Every rule of every check, on one assembly that passes and one that fails. */
class ChecksTest {

  static Stream<CheckCase> cases() {
    return CheckCases.all().stream();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void whatBreaksARuleIsFound(CheckCase c) {
    List<Finding> found = found(c, c.fail());
    assertThat(found).isNotEmpty();
    assertThat(found)
        .allSatisfy(
            f -> {
              assertThat(f.message()).isNotBlank();
              assertThat(f.fix()).isPresent();
              assertThat(f.rule().source()).isNotBlank();
            });
  }

  @ParameterizedTest
  @MethodSource("cases")
  void whatKeepsARuleIsLeftAlone(CheckCase c) {
    assertThat(found(c, c.pass())).isEmpty();
  }

  private static List<Finding> found(CheckCase c, CheckInput input) {
    assertThat(input.fields()).isNotEmpty();
    return Checks.of(input).findings().stream()
        .filter(f -> f.rule().id().equals(c.rule()))
        .toList();
  }

  @Test
  void aGutterThatCarriesOneRainMayBeTooSmallForAnother() {
    assertThat(gutterFindings("8 in/h")).isEmpty();
    assertThat(gutterFindings("400 in/h")).hasSize(1);
  }

  @Test
  void aGutterThatIsTooSmallIsToldTheSmallestSizeThatCarries() {
    assertThat(advice("400 in/h"))
        .contains("The kit's gutter is 5\" wide and 3 1/2\" deep, with one downspout here of 3\".")
        .contains("the smallest common set that carries it here")
        .contains("a gutter 7\" wide and 6\" deep, with a downspout at each end of 4\"");
    assertThat(advice("4000 in/h")).contains("that leave 6' 8\" of headroom, none carries it.");
  }

  private static String advice(String rain) {
    return gutterFindings(rain).get(0).fix().orElseThrow().words().in(IMPERIAL);
  }

  private static List<Finding> gutterFindings(String rain) {
    return Checks.of(CheckCases.in(CheckCases.plain(), rain)).findings().stream()
        .filter(f -> f.rule().id().equals("gutter-too-small"))
        .toList();
  }

  @Test
  void noRuleIsWithoutACase() {
    assertThat(cases().map(CheckCase::rule))
        .containsExactlyInAnyOrderElementsOf(Checks.rules().stream().map(Rule::id).toList());
  }

  @Test
  void whatTheModelCannotTellIsAskedOnceWithItsReasonAndSource() {
    List<SiteQuestion> asked = Checks.of(CheckCases.plain()).questions();
    assertThat(asked).hasSizeGreaterThan(10).doesNotHaveDuplicates();
    assertThat(asked)
        .allSatisfy(
            q -> {
              assertThat(q.text()).endsWith("?");
              assertThat(q.why()).endsWith(".");
              assertThat(q.source()).isNotBlank();
            });
    assertThat(asked).extracting(SiteQuestion::text).anyMatch(t -> t.contains("treated"));
  }

  @Test
  void treatmentIsNotAskedWhereTheModelTellsIt() {
    assertThat(Checks.of(CheckCases.treated()).questions())
        .extracting(SiteQuestion::text)
        .noneMatch(t -> t.contains("treated"));
  }
}
