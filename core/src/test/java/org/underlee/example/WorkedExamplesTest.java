package org.underlee.example;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.check.Answer;
import org.underlee.check.CheckInput;
import org.underlee.drainage.flow.RainData;
import org.underlee.finding.Finding;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.Survey;
import org.underlee.units.Lengths.UnitSystem;

/** What the page for contributors shows, done. */
class WorkedExamplesTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final String PAGE = "docs/how-to/add-a-kit-a-rule-a-writer-a-shape.md";

  /** A block of code that the page says is from a file of the project. */
  private static final Pattern QUOTED =
      Pattern.compile("From `([^`]+)`:\\n\\n```[a-z]*\\n(.*?)```", Pattern.DOTALL);

  @TempDir Path folder;

  @Test
  void aKitMadeFromABuiltInOneGivesItsOwnSizes() throws IOException {
    String builtIn =
        Files.readString(
            ROOT.resolve("core/src/main/resources/org/underlee/kit/formed-aluminium.json"));
    String own =
        builtIn
            .replace("\"id\": \"formed-aluminium\"", "\"id\": \"barn-steel\"")
            .replace("\"panHemMm\": {\"value\": 20", "\"panHemMm\": {\"value\": 30");
    Kit kit = KitReader.named(Files.writeString(folder.resolve("barn-steel.json"), own).toString());
    assertThat(kit.id()).isEqualTo("barn-steel");
    assertThat(hems(design(kit))).containsOnly(0.030);
    assertThat(hems(design(KitReader.builtIn()))).isNotEmpty().doesNotContain(0.030);
  }

  @Test
  void aRuleFindsTheBayThatBreaksItAndNoOther() {
    Design design = design(KitReader.builtIn());
    Answer answer =
        new LapsToClean()
            .of(
                CheckInput.of(
                    design.survey().bays(),
                    design.survey().elements(),
                    design.layout(),
                    RainData.builtIn().service(RainData.ANYWHERE),
                    design.proof().outlets()));
    assertThat(answer.findings())
        .extracting(Finding::message)
        .singleElement()
        .asString()
        .contains("B6 lap in 2 places");
    assertThat(answer.questions()).hasSize(1);
  }

  @Test
  void aWriterWritesOneLineForEachPan() {
    Design design = design(KitReader.builtIn());
    long pans = design.layout().parts().stream().filter(p -> p.kind() == PartKind.PAN).count();
    assertThat(BayLabels.write(design, UnitSystem.IMPERIAL).lines())
        .hasSize((int) pans)
        .contains("F1-B6-P2;6' 4 1/2\"")
        .isSorted();
  }

  @Test
  void whatThePageShowsIsInTheFilesThatItNames() throws IOException {
    List<String[]> shown =
        QUOTED
            .matcher(Files.readString(ROOT.resolve(PAGE)))
            .results()
            .map(m -> new String[] {m.group(1), m.group(2)})
            .toList();
    assertThat(shown).hasSizeGreaterThanOrEqualTo(4);
    for (String[] s : shown) {
      assertThat(Files.readString(ROOT.resolve(s[0]))).as(s[0]).contains(s[1]);
    }
  }

  private static Design design(Kit kit) {
    Survey survey = DeckRun.survey(ROOT.resolve("samples/pine-deck/pine-deck.ifc"));
    return DeckRun.design(survey, Scope.OUTSIDE, kit);
  }

  /** The height that the pans are folded up by: the flat sheet's width beyond the pan's, halved. */
  private static List<Double> hems(Design design) {
    return design.layout().parts().stream()
        .filter(p -> p.kind() == PartKind.PAN)
        .map(p -> Math.round((p.sheetWidth().orElseThrow() - p.width()) / 2 * 1e6) / 1e6)
        .distinct()
        .toList();
  }
}
