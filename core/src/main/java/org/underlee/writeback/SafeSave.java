package org.underlee.writeback;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.Consumer;
import org.underlee.finding.FileFault;
import org.underlee.finding.InputException;
import org.underlee.finding.StopSign;

/**
 * Saves so that the target is at every moment either what it was or all of the new file: a
 * temporary file beside the target, forced to the disk, read back, checked, then moved over the
 * target in one step. After a failure the target is as it was and the temporary file is gone; so it
 * is when nobody waits for it any more.
 */
public final class SafeSave {
  /** Temporary names that are tried: more are only in use after as many broken saves. */
  private static final int TEMPORARY_NAMES = 100;

  private final FileActions disk;

  public SafeSave() {
    this(FileActions.onDisk());
  }

  SafeSave(FileActions disk) {
    this.disk = disk;
  }

  /**
   * Saves a drained model.
   *
   * @param input the file that the model was read from, never written over unless {@code inPlace}
   * @param original the designer's bytes
   * @throws NotWrittenException when anything at all is wrong; the target is then as it was
   */
  public void drained(Path input, Path target, boolean inPlace, byte[] original, byte[] drained) {
    save(input, target, inPlace, drained, back -> BlockCheck.require(original, back));
  }

  /**
   * Saves a drained model over the file that it was read from, whose bytes are first kept beside it
   * in a file with {@code .bak} after its name; an older such file is replaced.
   *
   * @return the file that keeps them
   * @throws NotWrittenException when anything at all is wrong; the input is then as it was
   */
  public Path inPlace(Path input, byte[] original, byte[] drained) {
    Path backup = backup(input);
    try {
      plain(input, backup, false, disk.read(input));
    } catch (IOException e) {
      String advice = "Check the disk and the rights to its folder.";
      throw new NotWrittenException(backup + " was not written: " + FileFault.words(e), advice, e);
    }
    drained(input, input, true, original, drained);
    return backup;
  }

  /** Where {@link #inPlace} keeps what a file was. */
  public static Path backup(Path input) {
    return input.resolveSibling(input.getFileName() + ".bak");
  }

  /**
   * Saves bytes that need no check but that they are all there.
   *
   * @throws NotWrittenException as above
   */
  public void plain(Path input, Path target, boolean inPlace, byte[] bytes) {
    save(input, target, inPlace, bytes, back -> {});
  }

  private void save(
      Path input, Path target, boolean inPlace, byte[] bytes, Consumer<byte[]> check) {
    try {
      Path real = Files.exists(target) ? target.toRealPath() : target.toAbsolutePath();
      requireOther(input, real, inPlace);
      requirePlace(real);
      replace(real, bytes, check);
    } catch (IOException e) {
      String advice = "Check the disk and the rights to its folder, or choose another output file.";
      throw new NotWrittenException(target + " was not written: " + FileFault.words(e), advice, e);
    } catch (InputException | BlockCheck.FailedException e) {
      String advice = "This is a fault of the program: please report it with the model.";
      throw new NotWrittenException(target + " was not written: " + words(e), advice, e);
    }
  }

  private void replace(Path target, byte[] bytes, Consumer<byte[]> check) throws IOException {
    StopSign stop = StopSign.here();
    Path temporary = temporaryBeside(target);
    try {
      disk.create(temporary, bytes);
      stop.obey();
      disk.force(temporary);
      stop.obey();
      byte[] back = disk.read(temporary);
      requireSame(bytes, back);
      check.accept(back);
      stop.obey();
      disk.move(temporary, target);
    } finally {
      // Gone after the move; still there after a failure.
      disk.deleteIfThere(temporary);
    }
  }

  private static void requireOther(Path input, Path target, boolean inPlace) throws IOException {
    if (!inPlace && Files.exists(target) && Files.isSameFile(input, target)) {
      throw new NotWrittenException(
          target + " was not written: it is the input", "Choose another output file.");
    }
  }

  /** What is wrong with the place itself is said before the disk says it of a temporary file. */
  private static void requirePlace(Path target) {
    Path folder = target.resolveSibling("");
    if (!Files.isDirectory(folder)) {
      throw new NotWrittenException(
          target + " was not written: there is no folder " + folder,
          "Make the folder first, or choose another output file.");
    }
    if (Files.isDirectory(target)) {
      throw new NotWrittenException(
          target + " was not written: it is a folder", "Name a file in it.");
    }
  }

  private static Path temporaryBeside(Path target) throws IOException {
    for (int i = 0; i < TEMPORARY_NAMES; i++) {
      Path name = target.resolveSibling("." + target.getFileName() + "." + i + ".tmp");
      if (!Files.exists(name)) {
        return name;
      }
    }
    throw new IOException("too many temporary files of broken saves lie beside it");
  }

  private static void requireSame(byte[] written, byte[] back) throws IOException {
    if (!Arrays.equals(written, back)) {
      throw new IOException("what was read back is not what was written");
    }
  }

  private static String words(Exception e) {
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }
}
