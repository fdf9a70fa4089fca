package org.underlee.writeback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.underlee.finding.FileFault;

class SafeSaveTest {
  private static final TinyModel MODEL = TinyModel.of("IFC4", TinyModel.Length.METRE);
  private static final byte[] ORIGINAL = MODEL.bytes();
  private static final byte[] DRAINED = Drained.of(MODEL).bytes();
  private static final byte[] OLD = "an older file".getBytes(StandardCharsets.UTF_8);

  @TempDir Path folder;
  private Path input;
  private Path target;

  @BeforeEach
  void files() throws IOException {
    input = Files.write(folder.resolve("deck.ifc"), ORIGINAL);
    target = Files.write(folder.resolve("deck.drained.ifc"), OLD);
  }

  /** What can go wrong on a disk. */
  enum Fault {
    CREATE,
    HALF_WRITTEN,
    FORCE,
    READ,
    CHANGED_ON_DISK,
    MOVE
  }

  /** The real disk with one fault. */
  private record Faulty(FileActions real, Fault fault) implements FileActions {
    private void fail(Fault here) throws IOException {
      if (fault == here) {
        throw new IOException("no space left: " + here);
      }
    }

    @Override
    public void create(Path file, byte[] bytes) throws IOException {
      fail(Fault.CREATE);
      if (fault == Fault.HALF_WRITTEN) {
        real.create(file, java.util.Arrays.copyOf(bytes, bytes.length / 2));
        fail(Fault.HALF_WRITTEN);
      }
      real.create(file, bytes);
    }

    @Override
    public void force(Path file) throws IOException {
      fail(Fault.FORCE);
      real.force(file);
    }

    @Override
    public byte[] read(Path file) throws IOException {
      fail(Fault.READ);
      byte[] bytes = real.read(file);
      if (fault == Fault.CHANGED_ON_DISK) {
        bytes[bytes.length / 2] ^= 1;
      }
      return bytes;
    }

    @Override
    public void move(Path from, Path to) throws IOException {
      fail(Fault.MOVE);
      real.move(from, to);
    }

    @Override
    public void deleteIfThere(Path file) throws IOException {
      real.deleteIfThere(file);
    }
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  @ParameterizedTest
  @EnumSource
  void afterAFaultTheTargetIsAsItWasAndNothingIsLeftBehind(Fault fault) throws IOException {
    SafeSave save = new SafeSave(new Faulty(FileActions.onDisk(), fault));
    assertThatThrownBy(() -> save.drained(input, target, false, ORIGINAL, DRAINED))
        .isInstanceOf(NotWrittenException.class)
        .hasMessageContaining("deck.drained.ifc was not written")
        .satisfies(e -> assertThat(((NotWrittenException) e).advice()).contains("disk"));
    assertThat(target).hasBinaryContent(OLD);
    assertThat(input).hasBinaryContent(ORIGINAL);
    assertThat(names()).containsExactly("deck.drained.ifc", "deck.ifc");
  }

  @ParameterizedTest
  @EnumSource
  void afterAFaultInPlaceTheInputIsAsItWas(Fault fault) {
    SafeSave save = new SafeSave(new Faulty(FileActions.onDisk(), fault));
    assertThatThrownBy(() -> save.drained(input, input, true, ORIGINAL, DRAINED))
        .isInstanceOf(NotWrittenException.class);
    assertThat(input).hasBinaryContent(ORIGINAL);
  }

  @Test
  void aSoundModelReplacesTheTargetAndLeavesNoOtherFile() throws IOException {
    new SafeSave().drained(input, target, false, ORIGINAL, DRAINED);
    assertThat(target).hasBinaryContent(DRAINED);
    assertThat(names()).containsExactly("deck.drained.ifc", "deck.ifc");
  }

  @Test
  void theInputIsWrittenOverOnlyWhenAskedFor() throws IOException {
    Path alias = Files.createSymbolicLink(folder.resolve("alias.ifc"), input);
    for (Path same : List.of(input, folder.resolve(".").resolve("deck.ifc"), alias)) {
      assertThatThrownBy(() -> new SafeSave().drained(input, same, false, ORIGINAL, DRAINED))
          .isInstanceOf(NotWrittenException.class)
          .hasMessageContaining("it is the input");
      assertThat(input).hasBinaryContent(ORIGINAL);
    }
    new SafeSave().drained(input, alias, true, ORIGINAL, DRAINED);
    assertThat(input).hasBinaryContent(DRAINED);
    assertThat(alias).isSymbolicLink();
  }

  @Test
  void anUnsoundModelIsNotSaved() {
    Map<String, UnaryOperator<String>> faults =
        Map.of(
            "bytes outside the block have changed",
            t -> t.replace("'House'", "'Horse'"),
            "is not whole",
            t -> t.replace("/* Underlee ends */", ""),
            "the block is not there",
            t -> t.replaceFirst("/\\* Underlee begins[^*]*\\*/", "").replace(Markers.END, ""),
            "which is not there",
            t -> t.replaceFirst("(IFCRELVOIDSELEMENT\\('[^']*',\\$,\\$,\\$,)#", "$1#9"),
            "#10 is defined on line",
            t -> t.replaceFirst("#[0-9]+=IFCRELDECLARES", "#10=IFCRELDECLARES"),
            "the designer's file already has the GlobalId " + TinyModel.PROJECT,
            t -> t.replaceFirst("(IFCRELDECLARES\\(')[^']*", "$1" + TinyModel.PROJECT),
            "twice",
            t -> t.replaceFirst("(?s)(IFCCOSTITEM\\('([^']*)'.*IFCRELDECLARES\\(')[^']*", "$1$2"));
    faults.forEach(this::assertRefused);
  }

  private void assertRefused(String why, UnaryOperator<String> fault) {
    String wrong = fault.apply(new String(DRAINED, StandardCharsets.UTF_8));
    byte[] bytes = wrong.getBytes(StandardCharsets.UTF_8);
    assertThatThrownBy(() -> new SafeSave().drained(input, target, false, ORIGINAL, bytes))
        .isInstanceOf(NotWrittenException.class)
        .hasMessageContaining(why);
    assertThat(target).hasBinaryContent(OLD);
  }

  @Test
  void aFolderThatIsNotThereIsSaid() {
    Path nowhere = folder.resolve("no/such/deck.ifc");
    assertThatThrownBy(() -> new SafeSave().plain(input, nowhere, false, ORIGINAL))
        .isInstanceOf(NotWrittenException.class)
        .hasMessageEndingWith(
            "no/such/deck.ifc was not written: there is no folder " + nowhere.getParent());
  }

  @Test
  void aFolderInTheTargetsPlaceAndMissingRightsAreSaidInPlainWords() {
    assertThatThrownBy(() -> new SafeSave().plain(input, folder, false, ORIGINAL))
        .isInstanceOf(NotWrittenException.class)
        .hasMessageEndingWith("it is a folder");
    String temporary = folder.resolve(".deck.drained.ifc.0.tmp").toString();
    assertThat(FileFault.words(new AccessDeniedException(temporary)))
        .isEqualTo("permission denied");
    assertThat(FileFault.words(new FileSystemException(temporary, null, "Read-only file system")))
        .isEqualTo("Read-only file system");
  }

  /** The disk is full after so many bytes. */
  private record Full(FileActions real, int bytes) implements FileActions {
    @Override
    public void create(Path file, byte[] all) throws IOException {
      real.create(file, java.util.Arrays.copyOf(all, bytes));
      throw new IOException("no space left after " + bytes + " bytes");
    }

    @Override
    public void force(Path file) throws IOException {
      real.force(file);
    }

    @Override
    public byte[] read(Path file) throws IOException {
      return real.read(file);
    }

    @Override
    public void move(Path from, Path to) throws IOException {
      real.move(from, to);
    }

    @Override
    public void deleteIfThere(Path file) throws IOException {
      real.deleteIfThere(file);
    }
  }

  @Test
  void aDiskThatIsFullAfterAnyNumberOfBytesLeavesTheTargetAsItWas() throws IOException {
    int step = DRAINED.length / 50;
    for (int bytes = 0; bytes < DRAINED.length; bytes += step) {
      SafeSave save = new SafeSave(new Full(FileActions.onDisk(), bytes));
      assertThatThrownBy(() -> save.drained(input, target, false, ORIGINAL, DRAINED))
          .isInstanceOf(NotWrittenException.class);
      assertThatThrownBy(() -> save.inPlace(input, ORIGINAL, DRAINED))
          .isInstanceOf(NotWrittenException.class);
      assertThat(target).hasBinaryContent(OLD);
      assertThat(input).hasBinaryContent(ORIGINAL);
      assertThat(names()).containsExactly("deck.drained.ifc", "deck.ifc");
    }
  }

  @Test
  void inPlaceKeepsWhatItWasBesideIt() throws IOException {
    Path backup = new SafeSave().inPlace(input, ORIGINAL, DRAINED);
    assertThat(backup).hasFileName("deck.ifc.bak").hasBinaryContent(ORIGINAL);
    assertThat(input).hasBinaryContent(DRAINED);
    new SafeSave().inPlace(input, ORIGINAL, DRAINED);
    assertThat(backup).hasBinaryContent(DRAINED);
  }
}
