package org.underlee.finding;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Why a file could not be read or written, in plain words and without the names of classes. */
public final class FileFault {
  private FileFault() {}

  /** The file beside it that may be meant by the name of one that is not there. */
  public static Optional<Path> meant(Path missing) {
    Path folder = missing.resolveSibling("");
    Path listed = folder.toString().isEmpty() ? Path.of(".") : folder;
    try (Stream<Path> files = Files.list(listed)) {
      List<String> names =
          files.filter(Files::isRegularFile).map(f -> String.valueOf(f.getFileName())).toList();
      return Nearest.meant(String.valueOf(missing.getFileName()), names).stream()
          .findFirst()
          .map(missing::resolveSibling);
    } catch (IOException | UncheckedIOException e) {
      return Optional.empty(); // a folder that cannot be read has no name to offer
    }
  }

  /** As {@link #words(IOException)}. */
  public static String words(UncheckedIOException e) {
    IOException cause = e.getCause();
    return cause == null ? e.toString() : words(cause);
  }

  /** What the disk, or the reading of text, says. */
  public static String words(IOException e) {
    if (e instanceof NoSuchFileException) {
      return "there is no such file";
    }
    if (e instanceof AccessDeniedException) {
      return "permission denied";
    }
    if (e instanceof CharacterCodingException) {
      return "it is not text in UTF-8";
    }
    // The message of such a fault begins with a path, which may be one that the user never named.
    if (e instanceof FileSystemException onDisk && onDisk.getReason() != null) {
      return onDisk.getReason();
    }
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }
}
