package org.underlee.step;

import java.util.stream.IntStream;
import org.underlee.finding.Place;

/**
 * Finds line and column of an offset: a count of lines and the last line's start for each block of
 * the file, and a short search inside of a block. CR, LF and CRLF each end one line.
 */
final class LineTable {
  private static final int BLOCK = 1 << 14;

  private final StepBytes bytes;

  /** Number of line starts before a block, the first line's included. */
  private final long[] lines;

  /** The last line start before a block or at its beginning. */
  private final long[] lastStarts;

  LineTable(StepBytes bytes) {
    this.bytes = bytes;
    int blocks = (int) (bytes.size() / BLOCK) + 1;
    this.lines = new long[blocks];
    this.lastStarts = new long[blocks];
    IntStream.range(0, blocks - 1).parallel().forEach(this::measure);
    lines[0] = 1;
    for (int i = 1; i < blocks; i++) {
      lines[i] += lines[i - 1];
      lastStarts[i] = Math.max(lastStarts[i], lastStarts[i - 1]);
    }
  }

  private void measure(int block) {
    Walk walk = new Walk((long) block * BLOCK);
    walk.to((long) (block + 1) * BLOCK);
    lines[block + 1] = walk.lines;
    lastStarts[block + 1] = walk.lastStart;
  }

  Place place(long offset) {
    int block = (int) (offset / BLOCK);
    Walk walk = new Walk((long) block * BLOCK);
    walk.to(offset);
    long start = Math.max(walk.lastStart, lastStarts[block]);
    return Place.text(lines[block] + walk.lines, offset - start + 1);
  }

  /** Counts the line starts after a place; a start belongs to the line end before it. */
  private final class Walk {
    private final long from;
    private final byte[] buffer;
    long lines;
    long lastStart;

    Walk(long from) {
      this.from = from;
      // One byte more tells whether a CR at the end belongs to an LF.
      this.buffer = new byte[(int) Math.min(BLOCK + 1, bytes.size() - from)];
      bytes.copy(from, buffer, buffer.length);
    }

    void to(long end) {
      int length = (int) (end - from);
      for (int i = 0; i < length; i++) {
        if (buffer[i] == '\n' || (buffer[i] == '\r' && !newLineAt(i + 1))) {
          lines++;
          lastStart = from + i + 1;
        }
      }
    }

    private boolean newLineAt(int i) {
      return i < buffer.length && buffer[i] == '\n';
    }
  }
}
