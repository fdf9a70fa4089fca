package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.finding.InputException;

/** Each limit holds what is just inside of it and refuses what is just outside. */
class StepLimitsAtTheEdgeTest {
  private static byte[] bytes(String... data) {
    return StepTexts.file(data).getBytes(StandardCharsets.ISO_8859_1);
  }

  private static StepFile read(StepLimits limits, String... data) {
    return StepFile.of(bytes(data), "deck.ifc", limits);
  }

  @Test
  void listsAndTypesNestToTheLimitTogether() {
    StepLimits four = StepLimits.STANDARD.withNesting(4);
    for (String inside : new String[] {"(((1)))", "A(B(C(1)))", "(A((1)))", "(1),((2),(3)),A(4)"}) {
      assertThat(read(four, "#1=A(" + inside + ");").decode(0).size()).isPositive();
    }
    for (String outside : new String[] {"((((1))))", "A(B(C(D(1))))", "(A((B(1))))"}) {
      assertThatThrownBy(() -> read(four, "#1=A(" + outside + ");").decode(0))
          .as(outside)
          .isInstanceOf(InputException.class)
          .hasMessageContaining("nested deeper than 4");
    }
  }

  @Test
  void depthIsGivenBackWhenAListOrATypeEnds() {
    StepLimits three = StepLimits.STANDARD.withNesting(3);
    String many = "(1),B(2),((3)),B((4)),".repeat(50) + "$";
    assertThat(read(three, "#1=A(" + many + ");").decode(0).size()).isEqualTo(201);
  }

  /** The limit counts the first quotation mark too. */
  @ParameterizedTest
  @ValueSource(strings = {"'", "\""})
  void textsAndBinariesAreHeldToTheirBytes(String quote) {
    StepLimits fifty = StepLimits.STANDARD.withStringBytes(50);
    String most = quote + "A".repeat(49);
    assertThat(read(fifty, "#1=A(" + most + quote + ");").decode(0).size()).isEqualTo(1);
    assertThatThrownBy(() -> read(fifty, "#1=A(" + most + "A" + quote + ");"))
        .hasMessageContaining("not closed within 50 bytes");
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 1023, 1024, 1025, 5000})
  void asManyInstancesAsAllowedAreIndexed(int count) {
    String[] lines = new String[count];
    for (int i = 0; i < count; i++) {
      lines[i] = "#" + (i + 1) + "=A" + i % 3 + "(#" + (i + 1) + ");";
    }
    StepLimits limits = StepLimits.STANDARD.withRecords(count);
    StepFile file = read(limits, lines);
    assertThat(file.count()).isEqualTo(count);
    for (int i = 0; i < count; i += 1 + count / 40) {
      assertThat(file.id(i)).isEqualTo(i + 1);
      assertThat(file.keyword(i)).isEqualTo("A" + i % 3);
      assertThat(file.decode(i).ref(0)).isEqualTo(i + 1);
      assertThat(file.offset(i)).isEqualTo(file.range(i).from());
    }
    byte[] oneMore = bytes(String.join("\n", lines) + "\n#" + (count + 1) + "=B();");
    assertThatThrownBy(() -> StepFile.of(oneMore, "deck.ifc", limits))
        .hasMessageContaining("more than " + count + " instances")
        .hasMessageContaining("line " + (8 + count));
  }

  @Test
  void anIdHasAtMostEighteenDigits() {
    String eighteen = "123456789012345678";
    assertThat(StepTexts.data("#" + eighteen + "=A();").id(0)).isEqualTo(123456789012345678L);
    assertThatThrownBy(() -> StepTexts.data("#" + eighteen + "9=A();"))
        .hasMessageContaining("line 8, column 1")
        .hasMessageContaining("19 digits");
  }

  @ParameterizedTest
  @CsvSource({
    "1E5,100000,true",
    "1e-5,0.00001,true",
    "1.5E+2,150,true",
    "+7,7,false",
    "-7,-7,false",
    "-0,0,false",
    "12345678901234567,12345678901234567,false",
    "123456789012345,123456789012345,false"
  })
  void numbersKeepTheirKindAndTheirText(String raw, double value, boolean real) {
    StepInstance a = StepTexts.data("#1=A(" + raw + ");").decode(0);
    assertThat(a.number(0)).isEqualTo(value);
    assertThat(a.value(0) instanceof StepValue.Real).isEqualTo(real);
    assertThat(a.toString()).containsIgnoringCase(raw);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1-2", "1+", "1E5-3", "--1", "1.E-"})
  void aSignStandsOnlyAtTheBeginningAndAfterAnExponent(String raw) {
    StepFile file = StepTexts.data("#1=A(" + raw + ");");
    assertThatThrownBy(() -> file.decode(0)).isInstanceOf(InputException.class);
  }

  @Test
  void spaceAndCommentsMayStandBetweenAnyTwoWords() {
    String gap = " /* ;'( */\t\r\n";
    String plain = "#1 = ( A ( $ , 'x' ) B ( IFCX ( ( 1. , #2 ) ) , .T. , ( ) ) ) ;";
    StepInstance open = StepTexts.data(plain.replace(" ", gap)).decode(0);
    StepInstance tight = StepTexts.data(plain.replace(" ", "")).decode(0);
    assertThat(open.parts()).hasToString(tight.parts().toString());
    assertThat(open.parts()).hasSize(2);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\\S\\'",
        "\\PA\\",
        "\\PI\\",
        "\\X\\41",
        "\\X2\\0041\\X0\\",
        "\\X4\\00000041\\X0\\",
        "\\\\",
        "''"
      })
  void aDirectiveIsNoLoneBackslashAndEndsNoText(String directive) {
    StepFile file = StepTexts.data("#1=A('a" + directive + "b',7);");
    assertThat(file.findings()).isEmpty();
    assertThat(file.decode(0).text(0)).startsWith("a").endsWith("b");
    assertThat(file.decode(0).number(1)).isEqualTo(7);
  }

  @ParameterizedTest
  @ValueSource(strings = {"\\P@\\", "\\PJ\\", "\\PA", "\\X1\\", "\\X2", "\\Sx", "\\Q\\x"})
  void whatIsNearlyADirectiveIsALoneBackslash(String text) {
    assertThat(StepTexts.data("#1=A('a" + text + "b');").findings())
        .singleElement()
        .satisfies(f -> assertThat(f.rule().id()).isEqualTo("lone-backslash"));
  }

  @Test
  void aFileOfTwoGibibytesCannotBeWrittenToAndASmallerOneCan(@TempDir Path folder)
      throws IOException {
    Path file = Files.createFile(folder.resolve("large.ifc"));
    try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
      sparse.setLength(Integer.MAX_VALUE - 8L);
      StepFile.requireWritable(file);
      sparse.setLength(Integer.MAX_VALUE - 7L);
    }
    assertThatThrownBy(() -> StepFile.requireWritable(file))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("large.ifc")
        .hasMessageContaining("2147483640 bytes");
  }

  @Test
  void aFileKnowsItsHashAndWhatStandsInIt() {
    StepFile file = StepTexts.data("#1=A('x'); /* mark */");
    assertThat(file.sha256()).isEqualTo(Sha256.hex(file.bytes())).hasSize(64);
    assertThat(file.holds("mark */")).isTrue();
    assertThat(file.holds("marks")).isFalse();
  }
}
