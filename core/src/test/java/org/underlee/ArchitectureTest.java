package org.underlee;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ArchitectureTest {
  private static final Architecture OURS = new Architecture("org.underlee");
  private static final Architecture MISBUILT = new Architecture("org.underlee.misbuilt");

  private static final JavaClasses CORE =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("org.underlee");

  private static final JavaClasses BAD =
      new ClassFileImporter().importPackages("org.underlee.misbuilt");

  static Stream<ArchRule> everyRule() {
    return OURS.everyRule().stream();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("everyRule")
  void theCoreKeepsEveryRule(ArchRule rule) {
    rule.check(CORE);
  }

  @Test
  void everyPackageOfTheCoreIsInTheTable() {
    Set<String> packages =
        CORE.stream()
            .map(c -> c.getPackageName().split("\\.")[2])
            .collect(Collectors.toUnmodifiableSet());
    assertThat(Architecture.MAY_USE.keySet()).containsAll(packages);
    assertThat(packages).hasSizeGreaterThan(10);
  }

  /** One row of the table, as all are made alike, and every other rule. */
  static Stream<ArchRule> rulesThatTheBadClassesBreak() {
    return Stream.of(
        MISBUILT.dependenciesOf("units"),
        MISBUILT.unitsUseTheJdkOnly(),
        MISBUILT.theIfcReaderKnowsOnlyThePortsOfTheFraming(),
        MISBUILT.reportsKnowOnlyTheRecordsOfTheRun(),
        MISBUILT.packagesAreFreeOfCycles(),
        MISBUILT.noScreen(),
        MISBUILT.noStandardStreams(),
        MISBUILT.noClock(),
        MISBUILT.noDefaultLocale(),
        MISBUILT.noChance(),
        MISBUILT.noMutableStaticFields());
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("rulesThatTheBadClassesBreak")
  void aRuleThatIsBrokenFails(ArchRule rule) {
    assertThatThrownBy(() -> rule.check(BAD))
        .isInstanceOf(AssertionError.class)
        .hasMessageContaining("misbuilt");
  }
}
