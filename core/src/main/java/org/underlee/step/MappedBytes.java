package org.underlee.step;

import java.io.IOException;
import java.lang.ref.WeakReference;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.jspecify.annotations.Nullable;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/** A file of any length, mapped into memory in pieces, since one buffer ends at 2 GiB. */
final class MappedBytes implements StepBytes {
  private static final int STANDARD_PIECE_BITS = 30;

  /** Decoded instances lie near each other: so much of the text is copied for them together. */
  private static final int BLOCK_BITS = 14;

  private final String name;
  private final MappedByteBuffer[] pieces;
  private final int pieceBits;
  private final long size;

  /** Copies of blocks that something still reads from. */
  private final AtomicReferenceArray<@Nullable WeakReference<Window>> blocks;

  private MappedBytes(String name, MappedByteBuffer[] pieces, int pieceBits, long size) {
    this.name = name;
    this.pieces = pieces;
    this.pieceBits = pieceBits;
    this.size = size;
    this.blocks = new AtomicReferenceArray<>((int) (size >> BLOCK_BITS) + 1);
  }

  static MappedBytes of(Path file, String name) throws IOException {
    return of(file, name, STANDARD_PIECE_BITS);
  }

  /** In pieces of 2 to the power of {@code pieceBits} bytes. */
  static MappedBytes of(Path file, String name, int pieceBits) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      long size = channel.size();
      long piece = 1L << pieceBits;
      MappedByteBuffer[] pieces = new MappedByteBuffer[(int) ((size + piece - 1) >> pieceBits)];
      for (int i = 0; i < pieces.length; i++) {
        long from = (long) i << pieceBits;
        pieces[i] = channel.map(FileChannel.MapMode.READ_ONLY, from, Math.min(piece, size - from));
      }
      return new MappedBytes(name, pieces, pieceBits, size);
    }
  }

  @Override
  public long size() {
    return size;
  }

  @Override
  public void copy(long from, byte[] into, int length) {
    try {
      int done = 0;
      while (done < length) {
        MappedByteBuffer piece = pieces[(int) ((from + done) >> pieceBits)];
        int at = (int) ((from + done) & ((1L << pieceBits) - 1));
        int n = Math.min(length - done, piece.capacity() - at);
        piece.get(at, into, done, n);
        done += n;
      }
    } catch (InternalError e) {
      // How the JDK reports a mapped page that is gone.
      throw changed();
    }
  }

  private InputException changed() {
    return new InputException(
        Place.NOWHERE.inFile(name),
        name + " became shorter while it was read",
        "Wait until the program that writes it has finished, then read it again.");
  }

  @Override
  public Window shared(long from, int length) {
    int block = (int) (from >> BLOCK_BITS);
    if (block != (from + length) >> BLOCK_BITS) {
      return window(from, length, new byte[0]);
    }
    WeakReference<Window> copy = blocks.get(block);
    Window known = copy == null ? null : copy.get();
    if (known == null) {
      known = window((long) block << BLOCK_BITS, 1 << BLOCK_BITS, new byte[0]);
      blocks.set(block, new WeakReference<>(known));
    }
    return known;
  }

  @Override
  public Window window(long from, int length, byte[] spare) {
    int valid = (int) Math.min(length, size - from);
    byte[] bytes = spare.length >= valid ? spare : new byte[valid];
    copy(from, bytes, valid);
    return new Window(bytes, valid, from, from + valid == size);
  }
}
