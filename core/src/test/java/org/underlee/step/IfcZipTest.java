package org.underlee.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.finding.InputException;
import org.underlee.run.DeckRun;
import org.underlee.run.Survey;

class IfcZipTest {
  private static final byte[] MODEL =
      StepTexts.file("#1=A('x');").getBytes(StandardCharsets.ISO_8859_1);

  private static byte[] zip(String... names) {
    return zip(MODEL, names);
  }

  private static byte[] zip(byte[] content, String... names) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (String name : names) {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(content);
        zip.closeEntry();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static void assertRefused(byte[] zip, String message) {
    assertThatThrownBy(() -> StepFile.of(zip, "deck.ifczip"))
        .isInstanceOfSatisfying(
            InputException.class,
            e -> {
              assertThat(e.place().file()).hasValue("deck.ifczip");
              assertThat(e.advice()).isNotBlank();
            })
        .hasMessageContaining(message);
  }

  @Test
  void theOneModelIsReadWhateverElseIsThere(@TempDir Path folder) throws IOException {
    Path path = folder.resolve("named-wrongly.ifc");
    Files.write(path, zip("read me.txt", "folder/", "folder/Deck.IFC", "__MACOSX/._Deck.ifc"));
    StepFile file = StepFile.read(path);
    assertThat(file.zipped()).isTrue();
    assertThat(file.count()).isEqualTo(1);
    assertThat(file.bytes()).isEqualTo(MODEL);
    assertThat(file.name()).isEqualTo("named-wrongly.ifc");
    assertThat(StepFile.of(MODEL, "deck.ifc").zipped()).isFalse();
  }

  @Test
  void anArchiveIsSurveyedAsTheModelInIt() throws IOException {
    Path samples = Path.of(System.getProperty("underlee.root"), "samples");
    byte[] model = Files.readAllBytes(samples.resolve("harbour-balcony/harbour-balcony.ifc"));
    Survey plain = DeckRun.survey(model, "deck.ifc");
    Survey zipped = DeckRun.survey(zip(model, "deck.ifc"), "deck.ifczip");
    assertThat(zipped.bays()).hasToString(plain.bays().toString()).isNotEmpty();
    assertThat(zipped.model().step().bytes()).isEqualTo(model);
    assertThat(zipped.source().sha256()).isNotEqualTo(plain.source().sha256());
  }

  @Test
  void noneOrSeveralModelsAreRefused() {
    assertRefused(zip("a.txt"), "has no *.ifc entry");
    assertRefused(zip("a.ifc", "b.ifc"), "has more than one *.ifc entry");
    assertRefused(zip(), "has no *.ifc entry");
  }

  @Test
  void namesThatLeadOutOfTheArchiveAreRefused() {
    for (String name : new String[] {"../a.ifc", "b/../../a.txt", "/a.ifc", "\\a.ifc", "C:a.ifc"}) {
      assertRefused(zip(name), "points out of the archive");
    }
    assertThat(StepFile.of(zip("a..b/..c.ifc"), "deck.ifczip").count()).isEqualTo(1);
  }

  @Test
  void moreEntriesThanTheLimitAreRefused() {
    String[] names = new String[1000];
    Arrays.setAll(names, i -> i == 999 ? "deck.ifc" : i + ".txt");
    assertThat(StepFile.of(zip(names), "deck.ifczip").count()).isEqualTo(1);
    String[] more = Arrays.copyOf(names, 1001);
    more[1000] = "one more";
    assertRefused(zip(more), "more than 1000 entries");
  }

  @Test
  void anEntryThatGrowsOutOfProportionIsRefusedWhereverItIs() {
    byte[] spaces = new byte[3 << 20];
    Arrays.fill(spaces, (byte) ' ');
    assertRefused(zip(spaces, "deck.ifc"), "more than 100 times its size");
    assertRefused(zip(spaces, "bomb.txt", "deck.ifc"), "more than 100 times its size");
    byte[] padded = Arrays.copyOf(MODEL, 90 << 10);
    assertThat(StepFile.of(zip(padded, "deck.ifc"), "deck.ifczip").count()).isEqualTo(1);
    byte[] zip = zip(Arrays.copyOf(MODEL, 3 << 20), "deck.ifc");
    StepLimits wider = StepLimits.STANDARD.withZip(10, 2000);
    assertThat(StepFile.of(zip, "deck.ifczip", wider).count()).isEqualTo(1);
  }

  @Test
  void aDamagedArchiveIsReadOrRefusedAndNothingElse() {
    byte[] whole = zip("a.txt", "deck.ifc");
    Random random = new Random(3);
    int refused = 0;
    for (int i = 0; i < 2000; i++) {
      byte[] bytes = Arrays.copyOf(whole, i % 2 == 0 ? whole.length : random.nextInt(whole.length));
      if (bytes.length > 4) {
        bytes[4 + random.nextInt(bytes.length - 4)] ^= (byte) (1 << random.nextInt(8));
      }
      try {
        assertThat(StepFile.of(bytes, "deck.ifczip").count()).isEqualTo(1);
      } catch (InputException e) {
        refused++;
      }
    }
    assertThat(refused).isBetween(1000, 1999);
  }
}
