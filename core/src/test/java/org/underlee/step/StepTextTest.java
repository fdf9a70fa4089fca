package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class StepTextTest {
  /** Texts of every kind of letter, and of what has a meaning in an encoded text. */
  static Stream<String> texts() {
    Random random = new Random(23);
    String special = "'\\\\SPX0124;*/\n\r\t #$,()";
    return Stream.concat(
        Stream.of("", "'", "''", "\\", "\\X2\\", "\\S\\", "\uFFFF", "\uD83D\uDE00'"),
        Stream.generate(
                () -> {
                  StringBuilder text = new StringBuilder();
                  for (int n = random.nextInt(20); n > 0; n--) {
                    text.appendCodePoint(letter(random, special));
                  }
                  return text.toString();
                })
            .limit(500));
  }

  private static int letter(Random random, String special) {
    return switch (random.nextInt(5)) {
      case 0 -> special.charAt(random.nextInt(special.length()));
      case 1 -> ' ' + random.nextInt(95);
      case 2 -> random.nextInt(0x100);
      case 3 -> random.nextInt(0xD800);
      default -> 0xE000 + random.nextInt(0x110000 - 0xE000);
    };
  }

  @ParameterizedTest(name = "{index}") // a name may hold no letters that reports cannot
  @MethodSource("texts")
  void whatIsEncodedDecodesToItselfAndIsPrintableAscii(String text) {
    String encoded = StepText.encode(text);
    assertThat(StepText.decode(encoded)).isEqualTo(text);
    assertThat(encoded.chars()).allMatch(c -> c >= ' ' && c <= '~');
    StepFile file = StepTexts.data("#1=A(" + StepText.quoted(text) + ");");
    assertThat(file.decode(0).text(0)).isEqualTo(text);
  }

  /** Examples of ISO 10303-21:2016, 6.4.3, and of the IFC encoding pages. */
  @ParameterizedTest(name = "{index}")
  @CsvSource(
      quoteCharacter = '"',
      value = {
        "it''s,it's",
        "C:\\\\path,C:\\path",
        "C:\\path,C:\\path",
        "\\S\\D\\S\\v,\u00C4\u00F6",
        "\\PE\\\\S\\P,\u0430",
        "\\X\\C4,\u00C4",
        "\\X2\\03C0\\X0\\ = 3,\u03C0 = 3",
        "\\X2\\00C400D6\\X0\\,\u00C4\u00D6",
        "\\X4\\0001F600\\X0\\,\uD83D\uDE00",
        "\\X2\\D83DDE00\\X0\\,\uD83D\uDE00",
        "\\X2\\zzzz\\X0\\,\\X2\\zzzz\\X0\\",
        "\\X4\\00110000\\X0\\,\\X4\\00110000\\X0\\",
        "\\X\\9,\\X\\9"
      })
  void directivesAreDecoded(String encoded, String text) {
    assertThat(StepText.decode(encoded)).isEqualTo(text);
  }

  @Test
  void textIsEncodedInWideFormsOnlyWhereItMustBe() {
    assertThat(StepText.encode("2'x8\\")).isEqualTo("2''x8\\\\");
    assertThat(StepText.encode("a\u00E9\u03C0b")).isEqualTo("a\\X2\\00E903C0\\X0\\b");
    assertThat(StepText.encode("\uD83D\uDE00\n")).isEqualTo("\\X4\\0001F600\\X0\\\\X2\\000A\\X0\\");
  }

  @Test
  void anApostropheAfterAShiftDirectiveIsALetter() {
    StepInstance a = StepTexts.data("#1=A('Coordena\\S\\C\\S\\'','\\\\S\\\\',2);").decode(0);
    assertThat(a.text(0)).isEqualTo("Coordena\u00C3\u00A7");
    assertThat(a.text(1)).isEqualTo("\\S\\");
    assertThat(a.number(2)).isEqualTo(2);
  }

  @Test
  void bytesAboveAsciiAreUtf8WhereValidAndLatinElse() {
    String utf8 =
        new String("Tr\u00E4ger".getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1);
    assertThat(StepTexts.data("#1=A('" + utf8 + "','Tr\u00E4ger');").decode(0).values())
        .containsExactly(new StepValue.Text("Tr\u00E4ger"), new StepValue.Text("Tr\u00E4ger"));
  }

  @Test
  void aLineEndInsideAStringIsLayout() {
    assertThat(StepTexts.data("#1=A('one\r\ntwo');").decode(0).text(0)).isEqualTo("onetwo");
  }
}
