package org.underlee.writeback;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** What a save does to the disk, one by one, so that tests can make each of them fail. */
interface FileActions {
  /** Makes a file that was not there and writes all the bytes. */
  void create(Path file, byte[] bytes) throws IOException;

  /** Returns when the file is on the disk itself. */
  void force(Path file) throws IOException;

  byte[] read(Path file) throws IOException;

  /** Replaces the target in one step, or leaves it as it is. */
  void move(Path from, Path to) throws IOException;

  void deleteIfThere(Path file) throws IOException;

  /** The actions of this machine's file system. */
  static FileActions onDisk() {
    return new OnDisk();
  }

  /** The real ones. */
  final class OnDisk implements FileActions {
    @Override
    public void create(Path file, byte[] bytes) throws IOException {
      Files.write(file, bytes, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    }

    @Override
    public void force(Path file) throws IOException {
      try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
    }

    @Override
    public byte[] read(Path file) throws IOException {
      return Files.readAllBytes(file);
    }

    @Override
    public void move(Path from, Path to) throws IOException {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    }

    @Override
    public void deleteIfThere(Path file) throws IOException {
      Files.deleteIfExists(file);
    }
  }
}
