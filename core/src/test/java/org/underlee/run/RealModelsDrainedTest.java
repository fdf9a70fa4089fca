package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.underlee.framing.Deck;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.layout.Wishes;
import org.underlee.step.Sha256;
import org.underlee.writeback.Strip;

/**
 * Public models that have framing, as their programs wrote them and with other line ends, a byte
 * order mark and raw Latin-1: an assembly under each of their decks, though they are indoors; strip
 * gives the bytes back, and a second design over the first changes nothing.
 */
class RealModelsDrainedTest {
  /** {@code -Dunderlee.forms=true} for every model; the others take a minute. */
  private static final boolean ALL = Boolean.getBoolean("underlee.forms");

  private static final long QUICK_BYTES = 1_000_000;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "bimcollab-federated/01_ARC.ifc",
        "bimcollab-federated/02_STR.ifc",
        "homeskz/homeskz_grey1_3F.ifc",
        "homeskz/homeskz_grey2_3F.ifc",
        "homeskz/homeskz_sample1_2F.ifc",
        "schependomlaan/VL_Constructief.ifc",
      })
  void anAssemblyIsAddedTakenOutAndReplacedInEveryForm(String name) throws IOException {
    Path path = Path.of(System.getProperty("underlee.corpus", "."), "models", name);
    assumeTrue(Files.isRegularFile(path), "skipped: " + name + " is not there");
    assumeTrue(ALL || Files.size(path) < QUICK_BYTES, "skipped: -Dunderlee.forms=true is not set");
    byte[] own = Files.readAllBytes(path);
    int drained = 0;
    int parts = 0;
    for (Deck deck : DeckRun.survey(own, name).framing().decks()) {
      Kit kit = fitting(own, name, deck.id());
      for (byte[] form : forms(own)) {
        parts += addedTakenOutAndReplaced(form, name, deck.id(), kit);
        drained++;
      }
    }
    assertThat(parts).as("parts under %s", name).isPositive();
    System.out.printf(Locale.ROOT, "%s: %d designs, %d parts%n", name, drained, parts);
  }

  private static int addedTakenOutAndReplaced(byte[] original, String name, String deck, Kit kit) {
    Design design = design(original, name, deck, kit);
    byte[] written = design.written().bytes();
    if (design.layout().parts().isEmpty()) {
      assertThat(written).as("%s %s: nothing fits", name, deck).isEqualTo(original);
      return 0;
    }
    Strip.Stripped stripped = Strip.original(written).orElseThrow();
    assertThat(stripped.exact()).isTrue();
    assertThat(Sha256.hex(stripped.bytes()))
        .as("%s %s", name, deck)
        .isEqualTo(Sha256.hex(original));
    assertThat(Sha256.hex(design(written, name, deck, kit).written().bytes()))
        .as("designed again: %s %s", name, deck)
        .isEqualTo(Sha256.hex(written));
    return design.layout().parts().size();
  }

  /** The first kit that anything of fits into a deck; the last one where none does. */
  private static Kit fitting(byte[] bytes, String name, String deck) {
    List<Kit> kits = KitReader.allBuiltIn();
    return kits.stream()
        .filter(k -> !design(bytes, name, deck, k).layout().parts().isEmpty())
        .findFirst()
        .orElse(kits.get(kits.size() - 1));
  }

  private static Design design(byte[] bytes, String name, String deck, Kit kit) {
    Scope scope = new Scope(Optional.of(deck)).with(Wishes.NONE.withBoardsOff());
    return DeckRun.design(DeckRun.survey(bytes, name), scope, kit);
  }

  /** As it is, line feeds, carriage returns with them, marked, and a raw byte above ASCII. */
  private static List<byte[]> forms(byte[] own) {
    List<byte[]> forms = new ArrayList<>();
    String text = new String(own, StandardCharsets.ISO_8859_1);
    String lines = text.replace("\r\n", "\n");
    forms.add(own);
    forms.add(lines.getBytes(StandardCharsets.ISO_8859_1));
    forms.add(lines.replace("\n", "\r\n").getBytes(StandardCharsets.ISO_8859_1));
    ByteArrayOutputStream marked = new ByteArrayOutputStream();
    marked.writeBytes("\uFEFF".getBytes(StandardCharsets.UTF_8));
    marked.writeBytes(own);
    forms.add(marked.toByteArray());
    String latin = text.replaceFirst("(IFCPROJECT\\('[^']*',#\\d+,)'", "$1'Caf\u00e9 ");
    assertThat(latin).isNotEqualTo(text);
    forms.add(latin.getBytes(StandardCharsets.ISO_8859_1));
    return forms;
  }
}
