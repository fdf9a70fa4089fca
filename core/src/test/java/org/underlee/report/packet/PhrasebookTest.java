package org.underlee.report.packet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.underlee.check.SiteQuestion;
import org.underlee.drainage.LeakCause;
import org.underlee.drainage.flow.CapacityData;
import org.underlee.finding.Finding;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.PartKind;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Words;

class PhrasebookTest {
  private static final Path ROOT = Path.of(System.getProperty("underlee.root", "."));

  /** Parts whose purpose stands on the gutter's sheet. */
  private static final Set<PartKind> PRINTED =
      Set.of(PartKind.OUTLET, PartKind.DOWNSPOUT, PartKind.STRAP, PartKind.ELBOW);

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

  private static Design design(String sample) {
    return DeckRun.design(
        DeckRun.survey(ROOT.resolve("samples/" + sample + "/" + sample + ".ifc")),
        Scope.OUTSIDE,
        KitReader.builtIn());
  }

  @Test
  void allThatIsToldOfTheSamplesIsSaidInSpanish() {
    for (String sample : List.of("pine-deck", "harbour-balcony", "hillside-terrace")) {
      Design design = design(sample);
      Set<String> english = new TreeSet<>();
      for (Finding finding : design.findings()) {
        sameOnes(finding.words(), english);
        finding.fix().ifPresent(f -> sameOnes(f.words(), english));
      }
      for (SiteQuestion question : design.checks().questions()) {
        same(question.text(), english);
        // What rain was reckoned with is written out in English before it comes to the book.
        if (!question.why().matches(".*\\d\\.\\d.*")) {
          same(question.why(), english);
        }
      }
      same(design.layout().kit().name(), english);
      for (FieldLayout field : design.layout().fields()) {
        sameOnes(field.binding(), english);
        field.parts().stream()
            .filter(p -> PRINTED.contains(p.kind()))
            .forEach(p -> sameOnes(p.why().reason(), english));
      }
      assertThat(design.findings()).hasSizeGreaterThan(3);
      assertThat(english).as(sample + ": said in English still").isEmpty();
    }
  }

  /** What is told of a model's file, before any deck is found in it, stays in English. */
  @Test
  void whateverIsToldOfADesignIsSaidInSpanish() throws IOException {
    Set<String> texts = ToldTexts.in(telling());
    for (LeakCause cause : LeakCause.values()) {
      texts.addAll(List.of(cause.why(), cause.fix()));
    }
    assertThat(texts)
        .hasSizeGreaterThan(160)
        .contains("one outlet serves %s of gutter.", "Use a kit of one metal.", "one downspout");
    Set<String> english = new TreeSet<>();
    texts.forEach(text -> same(text, english));
    assertThat(english).as("said in English still").isEmpty();
  }

  /** Parts of sentences that findings of the layout take from elsewhere in it. */
  private static final Set<String> TAKEN_IN =
      Set.of("Alternative.java", "SeatLimit.java", "SeatRange.java", "Unseated.java");

  /** The files of checks, of the proof, and those of the layout that make findings. */
  private static List<Path> telling() throws IOException {
    List<Path> telling = new ArrayList<>();
    for (String part : List.of("check", "drainage", "layout")) {
      try (Stream<Path> files =
          Files.walk(ROOT.resolve("core/src/main/java/org/underlee").resolve(part))) {
        for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
          if (!part.equals("layout")
              || TAKEN_IN.contains(file.getFileName().toString())
              || Files.readString(file).contains("import org.underlee.finding.F")) {
            telling.add(file);
          }
        }
      }
    }
    return telling;
  }

  @Test
  void methodsOfRatingAndHowFarTheyCanBeTrustedAreSaidInSpanish() {
    Set<String> english = new TreeSet<>();
    CapacityData.builtIn().methods().forEach(m -> same(m.name(), english));
    assertThat(english).isEmpty();
    assertThat(SPANISH.say("Beij gutter formula (from memory — verify)"))
        .isEqualTo("fórmula de Beij para canalones (de memoria: compruébelo)");
    assertThat(SPANISH.say("IPC 2021, Table 1106.3 (your own table)"))
        .isEqualTo("IPC 2021, Table 1106.3 (su propia tabla)");
    assertThat(SPANISH.say("deck-1 (of no book)")).isEqualTo("deck-1 (of no book)");
  }

  @Test
  void whatIsBoughtHasASpanishNameInEveryKit() {
    Set<String> english = new TreeSet<>();
    for (Kit kit : KitReader.allBuiltIn()) {
      same(kit.name(), english);
      kit.stock()
          .forEach(
              item -> {
                same(item.description(), english);
                same(item.shop().unit(), english);
              });
    }
    assertThat(english).as("named in English still").isEmpty();
  }

  @Test
  void measuresOfSentencesHaveUnitsAndDecimalsOfTheLanguage() {
    Writing writing = new Writing(UnitSystem.IMPERIAL, "es");
    assertThat(writing.measures("24.3 sq ft, 59.54 gallons an hour, 1:67.3 (1/8 in per ft)"))
        .isEqualTo("24,3 pies², 59,54 galones por hora, 1:67,3 (1/8 pulg por pie)");
    assertThat(writing.measures("IRC 507.2, 3.9 in/h")).isEqualTo("IRC 507.2, 3,9 pulg/h");
    assertThat(new Writing(UnitSystem.IMPERIAL, "en").measures("24.3 sq ft"))
        .isEqualTo("24.3 sq ft");
  }

  private static void same(String text, Set<String> english) {
    if (SPANISH.say(text).equals(text)) {
      english.add(text);
    }
  }

  /** Each sentence and clause for itself: one that is translated must not hide one that is not. */
  private static void sameOnes(Words words, Set<String> english) {
    boolean speaks = words.template().replace("%s", "").chars().anyMatch(Character::isLetter);
    if (speaks && SPANISH.say(words.template()).equals(words.template())) {
      english.add(words.template());
    }
    for (Object part : words.parts()) {
      if (part instanceof Words inner) {
        sameOnes(inner, english);
      } else if (part instanceof String text && text.contains(" ")) {
        same(text, english);
      }
    }
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
