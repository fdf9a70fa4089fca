package org.underlee.panel;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** View → view model → run. */
class PanelArchitectureTest {
  private static final JavaClasses PANEL =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("org.underlee.panel");

  private static final String[] LOGIC =
      Stream.of(
              "step",
              "ifc",
              "framing",
              "bay",
              "kit",
              "layout",
              "drainage",
              "check",
              "takeoff",
              "writeback")
          .map(p -> "org.underlee." + p + "..")
          .toArray(String[]::new);

  private static ArchRule noScreenIn(String... packages) {
    return noClasses()
        .that()
        .resideInAnyPackage(packages)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("javafx.scene..", "javafx.stage..", "javafx.application..");
  }

  @Test
  void viewModelsAndHostsKnowNoScreen() {
    assertThat(PANEL).hasSizeGreaterThan(30);
    noScreenIn("..panel.model..", "..panel.host..").check(PANEL);
  }

  @Test
  void viewsCallNoLogicButViewModels() {
    noClasses()
        .that()
        .resideInAPackage("..panel.view..")
        .should()
        .dependOnClassesThat()
        .haveFullyQualifiedName("org.underlee.run.DeckRun")
        .orShould()
        .dependOnClassesThat()
        .resideInAnyPackage(LOGIC)
        .check(PANEL);
  }

  @Test
  void hostsKnowNothingOfThePanel() {
    noClasses()
        .that()
        .resideInAPackage("..panel.host..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("..panel.model..", "..panel.view..")
        .check(PANEL);
  }

  @Test
  void aRuleThatIsBrokenFails() {
    assertThatThrownBy(() -> noScreenIn("..panel.view..").check(PANEL))
        .isInstanceOf(AssertionError.class);
    assertThatThrownBy(
            () ->
                noClasses()
                    .that()
                    .resideInAPackage("..panel.model..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(LOGIC)
                    .check(PANEL))
        .isInstanceOf(AssertionError.class);
    assertThatThrownBy(
            () ->
                classes()
                    .that()
                    .resideInAPackage("..panel.model..")
                    .should()
                    .resideInAPackage("..panel.view..")
                    .check(PANEL))
        .isInstanceOf(AssertionError.class);
  }
}
