package org.underlee.report.packet;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.underlee.check.SiteQuestion;
import org.underlee.finding.Finding;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.units.Words;

class PhrasebookTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));
  private static final Phrasebook SPANISH = Phrasebook.of("es");

  @Test
  void aPhraseHasAsManyPlacesAsItsEnglish() {
    assertThat(SPANISH.phrases()).hasSizeGreaterThan(60);
    SPANISH
        .phrases()
        .forEach(
            (english, spanish) ->
                assertThat(spanish.split("%s", -1))
                    .as(english)
                    .hasSameSizeAs(english.split("%s", -1)));
  }

  @Test
  void allThatIsFoundOnTheSampleIsSaidInSpanish() {
    Design design =
        DeckRun.design(
            DeckRun.survey(ROOT.resolve("samples/pine-deck/pine-deck.ifc")),
            Scope.OUTSIDE,
            KitReader.builtIn());
    List<String> english = new ArrayList<>();
    for (Finding finding : design.findings()) {
      sameOnes(finding.words(), english);
      finding.fix().ifPresent(f -> sameOnes(f.words(), english));
    }
    for (SiteQuestion question : design.checks().questions()) {
      if (SPANISH.say(question.text()).equals(question.text())) {
        english.add(question.text());
      }
    }
    assertThat(design.findings()).hasSizeGreaterThan(5);
    assertThat(english).as("said in English still").isEmpty();
  }

  /** Each sentence and clause for itself: one that is translated must not hide one that is not. */
  private static void sameOnes(Words words, List<String> english) {
    boolean speaks = words.template().replace("%s", "").chars().anyMatch(Character::isLetter);
    if (speaks && SPANISH.say(words.template()).equals(words.template())) {
      english.add(words.template());
    }
    words.parts().stream()
        .filter(Words.class::isInstance)
        .forEach(part -> sameOnes((Words) part, english));
  }

  @Test
  void whatTheBookDoesNotKnowStaysAsItIs() {
    Words unknown = Words.of("%s is not in any book", "B3");
    assertThat(unknown.translated(SPANISH::say)).isEqualTo(unknown);
    assertThat(Phrasebook.of("en").phrases()).isEmpty();
    assertThat(Optional.of(SPANISH.say("deck-1: the gutter has one outlet and no overflow.")))
        .contains("deck-1: el canalón tiene una sola salida y ningún rebosadero.");
  }
}
