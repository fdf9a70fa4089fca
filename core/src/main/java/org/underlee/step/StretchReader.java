package org.underlee.step;

import java.util.function.LongSupplier;
import org.underlee.finding.InputException;

/** Reads instances that follow each other, with the windows of the file that this needs. */
final class StretchReader {
  /** Longer instances and comments are refused, so that none fills the memory. */
  private static final int LONGEST = 1 << 28;

  /** More than most instances, comments and headers take. */
  private static final int USUAL = 1 << 12;

  private final StepCursor cursor;

  StretchReader(StepCursor cursor) {
    this.cursor = cursor;
  }

  /**
   * Reads one whole thing from a place on, again with more of the file where what was shown did not
   * reach; the cursor is then after it.
   */
  long whole(long from, LongSupplier thing) {
    for (int length = USUAL; ; length *= 2) {
      cursor.load(from, length);
      try {
        long result = thing.getAsLong();
        if (!cursor.ranOut) {
          return result;
        }
      } catch (InputException e) {
        if (!cursor.ranOut) {
          throw e;
        }
      }
      if (length >= LONGEST) {
        cursor.load(from, 1);
        throw cursor.error(
            cursor.at,
            "what begins here does not end within " + LONGEST + " bytes",
            "Maybe a comment is not closed, or the file is damaged: export it again.");
      }
    }
  }

  /**
   * Reads the instance whose {@code #} is at {@code from}, and more up to {@code until} or to what
   * is none.
   */
  Stretch read(long from, long until) {
    int expected = (int) Math.min(until - from, Stretches.CHUNK);
    Stretch stretch = new Stretch(from, expected);
    InstanceReader reader = new InstanceReader(cursor, stretch.noticed);
    long at = from;
    boolean more = true;
    while (more && at < until && at - from < LONGEST) {
      long id = whole(at, reader::instance);
      stretch.add(id, (int) (at - from), stretch.keywords.number(cursor));
      at = whole(cursor.offset(), this::nextThing);
      more = cursor.at('#');
    }
    stretch.stop = at;
    return stretch;
  }

  private long nextThing() {
    cursor.skipSpace();
    cursor.atEnd();
    return cursor.offset();
  }

  /**
   * Reads as above from what looks like an instance, which it may not be, inside of the window that
   * the cursor shows. Stops before an instance that is damaged or not all shown.
   */
  Stretch tryFrom(long from, long until) {
    Stretch stretch = new Stretch(from, (int) (until - from));
    InstanceReader reader = new InstanceReader(cursor, stretch.noticed);
    cursor.tentative = true;
    try {
      while (stretch.stop < until && cursor.at('#')) {
        long id = reader.instance();
        char keyword = stretch.keywords.number(cursor);
        cursor.skipSpace();
        if (cursor.atEnd() || cursor.ranOut) {
          break;
        }
        stretch.add(id, (int) (stretch.stop - from), keyword);
        stretch.stop = cursor.offset();
      }
    } catch (InputException e) {
      // Whoever reads on from the stop in earnest meets the fault again, and shows where it is.
      return stretch;
    } finally {
      cursor.tentative = false;
    }
    return stretch;
  }
}
