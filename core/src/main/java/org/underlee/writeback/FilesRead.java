package org.underlee.writeback;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Files that something reads, and that it must therefore never write over; each with its part. */
public final class FilesRead {
  public static final FilesRead NONE = new FilesRead(List.of());

  private record Named(Path file, String by) {}

  private final List<Named> all;

  private FilesRead(List<Named> all) {
    this.all = List.copyOf(all);
  }

  /**
   * One more.
   *
   * @param by what it is read as, for messages: {@code --kit}, {@code the open model}
   */
  public FilesRead with(Path file, String by) {
    List<Named> more = new ArrayList<>(all);
    more.add(new Named(file, by));
    return new FilesRead(more);
  }

  /** Without what is read as something. */
  public FilesRead without(String by) {
    return new FilesRead(all.stream().filter(n -> !n.by.equals(by)).toList());
  }

  /** What a file is read as, whatever path leads to it; empty when it is not read. */
  public Optional<String> partOf(Path file) {
    return all.stream().filter(n -> isSame(n.file, file)).map(Named::by).findFirst();
  }

  /**
   * Refuses to write over one of them.
   *
   * @throws NotWrittenException saying what it is read as
   */
  public void requireApart(Path target) {
    partOf(target)
        .ifPresent(
            by -> {
              throw new NotWrittenException(
                  target + " was not written: it is an input (" + by + ")",
                  "Choose another output file.");
            });
  }

  private static boolean isSame(Path file, Path other) {
    try {
      if (Files.exists(file) && Files.exists(other)) {
        return Files.isSameFile(file, other);
      }
    } catch (IOException e) {
      return false; // what cannot be looked at cannot be read either
    }
    return file.toAbsolutePath().normalize().equals(other.toAbsolutePath().normalize());
  }
}
