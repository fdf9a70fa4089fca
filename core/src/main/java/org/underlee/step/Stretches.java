package org.underlee.step;

import java.util.ArrayDeque;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.underlee.finding.StopSign;

/**
 * Reads stretches of the file on all processors ahead of the one reader that goes through it from
 * the beginning. Each chunk of the file is read from the first place that looks like an instance.
 * Whether it is one, and not a text or comment, is not known before the one reader comes to this
 * very place in search of an instance: what follows is then what it would read itself, since
 * reading on depends on nothing that was before. A wrong guess is dropped and costs only time.
 */
final class Stretches {
  /** Small enough for a processor's cache, large against the guess at its beginning. */
  static final int CHUNK = 1 << 20;

  /** Shown after a chunk, for the end of its last instance. */
  private static final int OVERLAP = 1 << 14;

  /** Shown before a chunk, for the semicolon and line end before its first instance. */
  private static final int LEAD = 8;

  /** Chunks a processor in one wave; the stretches of one wave are in memory together. */
  private static final int WAVE = 16;

  private final StepSource source;
  private final long size;
  private final int chunk;
  private final ArrayDeque<Stretch> ahead = new ArrayDeque<>();
  private final Queue<StepCursor> idle = new ConcurrentLinkedQueue<>();
  private long waveEnd;

  Stretches(StepSource source, long from, int chunk) {
    this.source = source;
    this.size = source.bytes.size();
    this.chunk = chunk;
    this.waveEnd = from;
  }

  /** The stretch that begins at an instance, where one was read ahead. */
  Optional<Stretch> at(long instance) {
    if (instance >= waveEnd && size - instance > 2L * chunk) {
      readWave(instance);
    }
    while (!ahead.isEmpty() && ahead.getFirst().start < instance) {
      ahead.removeFirst();
    }
    boolean met = !ahead.isEmpty() && ahead.getFirst().start == instance;
    return met ? Optional.of(ahead.removeFirst()) : Optional.empty();
  }

  /** Where the next stretch that was read ahead begins, else the end of the file. */
  long next() {
    return ahead.isEmpty() ? Math.max(waveEnd, size) : ahead.getFirst().start;
  }

  private void readWave(long from) {
    int chunks = WAVE * Runtime.getRuntime().availableProcessors();
    int n = (int) Math.min(chunks, (size - from + chunk - 1) / chunk);
    StopSign.here().obey();
    ahead.clear();
    ahead.addAll(
        IntStream.range(0, n)
            .parallel()
            .mapToObj(i -> read(from + (long) i * chunk))
            .filter(s -> s.count > 0)
            .toList());
    waveEnd = from + (long) n * chunk;
  }

  private Stretch read(long from) {
    StepCursor cursor = Optional.ofNullable(idle.poll()).orElseGet(() -> new StepCursor(source));
    long shown = Math.max(0, from - LEAD);
    cursor.load(shown, chunk + LEAD + OVERLAP);
    long until = Math.min(size, from + chunk);
    boolean found = findInstance(cursor, from, until);
    Stretch stretch =
        found ? new StretchReader(cursor).tryFrom(cursor.offset(), until) : new Stretch(from, 0);
    idle.add(cursor);
    return stretch;
  }

  /** Moves to the first {@code #} after a semicolon and white space. */
  private static boolean findInstance(StepCursor cursor, long from, long until) {
    boolean afterEnd = false;
    int end = (int) Math.min(cursor.limit, cursor.at + until - cursor.offset());
    for (int i = cursor.at; i < end; i++) {
      byte c = cursor.bytes[i];
      if (c == '#' && afterEnd && cursor.offset(i) >= from) {
        cursor.at = i;
        return true;
      }
      afterEnd = c == ';' || (afterEnd && c >= 0 && c <= ' ');
    }
    return false;
  }
}
