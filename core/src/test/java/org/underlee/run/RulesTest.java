package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Field;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.underlee.finding.Rule;

class RulesTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));

  /**
   * When this fails, write the page again and look at the diff: {@code java -cp
   * core/target/test-classes:plugin/command/target/underlee.jar org.underlee.run.RulesReference .}
   */
  @Test
  void thePublishedReferenceIsWhatTheCodeSays() {
    assertThat(ROOT.resolve(RulesReference.FILE)).hasContent(RulesReference.page());
  }

  @Test
  void everyRuleThatAClassHoldsIsInTheList() {
    Set<Rule> held =
        new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests())
                .importPackages("org.underlee")
                .stream()
                .flatMap(c -> c.getFields().stream())
                .filter(f -> f.getModifiers().contains(JavaModifier.STATIC))
                .filter(f -> f.getRawType().isEquivalentTo(Rule.class))
                .map(RulesTest::value)
                .collect(Collectors.toUnmodifiableSet());
    assertThat(held).hasSizeGreaterThan(10).containsExactlyInAnyOrderElementsOf(Rules.all());
  }

  private static Rule value(JavaField constant) {
    Field field = constant.reflect();
    field.setAccessible(true);
    try {
      return (Rule) field.get(null);
    } catch (IllegalAccessException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void everyRuleHasAnIdOfItsOwnAndAMeaningOnOneLine() {
    assertThat(Rules.all()).extracting(Rule::id).doesNotHaveDuplicates();
    assertThat(Rules.all()).extracting(Rule::id).allMatch(id -> id.matches("[a-z]+(-[a-z]+)*"));
    assertThat(Rules.all()).extracting(Rule::meaning).allMatch(m -> m.matches("[A-Z][^|\\n]+\\."));
  }
}
