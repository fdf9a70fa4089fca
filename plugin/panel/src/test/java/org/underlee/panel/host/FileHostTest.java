package org.underlee.panel.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.underlee.finding.InputException;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;

/** The designer's file is given back as it was, and what others do to it is left alone. */
class FileHostTest {
  private static final Path SAMPLE =
      Path.of(System.getProperty("underlee.root", "../.."), "samples/pine-deck/pine-deck.ifc");

  @TempDir Path folder;

  private Path model;
  private byte[] designer;
  private FileHost host;
  private Design design;

  @BeforeEach
  void openASample() throws IOException {
    model = Files.copy(SAMPLE, folder.resolve("pine.ifc"));
    designer = Files.readAllBytes(model);
    host = new FileHost(Optional.of(model));
    design = DeckRun.design(DeckRun.survey(model), Scope.OUTSIDE, KitReader.builtIn());
  }

  private Host.Change change(Path target, boolean inPlace) {
    return new Host.Change("parts", design, target, inPlace);
  }

  @Test
  void theDesignersFileIsKeptOnceHoweverOftenItIsWrittenInPlace() throws IOException {
    host.apply(change(model, true));
    host.apply(change(model, true));
    assertThat(Files.readAllBytes(model)).isEqualTo(design.written().bytes());
    assertThat(Files.readAllBytes(folder.resolve("pine.ifc.before-underlee"))).isEqualTo(designer);
    assertThat(folder.resolve("pine.ifc.before-underlee-2")).doesNotExist();
    assertThat(host.undo()).isTrue();
    assertThat(host.undo()).isTrue();
    assertThat(Files.readAllBytes(model)).isEqualTo(designer);
    assertThat(host.undo()).isFalse();
  }

  @Test
  void whatWasKeptBeforeIsNeverWrittenOver() throws IOException {
    Path kept = Files.writeString(folder.resolve("pine.ifc.before-underlee"), "an older export");
    host.apply(change(model, true));
    assertThat(kept).hasContent("an older export");
    assertThat(Files.readAllBytes(folder.resolve("pine.ifc.before-underlee-2")))
        .isEqualTo(designer);
  }

  @Test
  void aFileThatChangedSinceItWasReadIsNotWrittenOver() throws IOException {
    Files.writeString(model, "the designer was here");
    assertThatThrownBy(() -> host.apply(change(model, true)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("not as it was read");
    assertThat(model).hasContent("the designer was here");
    assertThat(folder.resolve("pine.ifc.before-underlee")).doesNotExist();
  }

  @Test
  void aFileThatChangedSinceItWasWrittenIsNotTakenBack() throws IOException {
    Path copy = folder.resolve("copy.ifc");
    host.apply(change(copy, false));
    Files.writeString(copy, "someone worked on it");
    assertThatThrownBy(host::undo)
        .isInstanceOf(InputException.class)
        .hasMessageContaining("not as it was written");
    assertThat(copy).hasContent("someone worked on it");
  }

  @Test
  void whatWasWrittenOfAnotherModelIsNotTakenBack() {
    Path copy = folder.resolve("copy.ifc");
    host.apply(change(copy, false));
    host.open(folder.resolve("other.ifc"));
    assertThat(host.undo()).isFalse();
    assertThat(copy).exists();
  }
}
