package org.underlee.ifc;

import java.util.concurrent.atomic.AtomicLong;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.framing.BuildingElement;

/**
 * The memory that the bodies of one reading may take together. One detailed body used in many
 * places, or lengths that lost their unit, can ask for more than there is: that is said in time,
 * since nobody can when memory is full. Counted in bytes, so the order of reading does not matter.
 */
final class Room {
  /**
   * A model may be read twice, near its framing and whole, and a body takes several times its size
   * while it is made: a third of Java's memory for each reading leaves a third for the work.
   */
  private static final int SHARE = 3;

  private final String file;
  private final long most;
  private final AtomicLong taken = new AtomicLong();

  private Room(String file, long most) {
    this.file = file;
    this.most = most;
  }

  /** A share of the memory that Java was given. */
  static Room of(String file) {
    return new Room(file, Runtime.getRuntime().maxMemory() / SHARE);
  }

  static Room of(String file, long most) {
    return new Room(file, most);
  }

  /**
   * Keeps one more element.
   *
   * @throws InputException when all together are too large
   */
  void take(BuildingElement element) {
    if (taken.addAndGet(element.shape().bytes()) > most) {
      throw new InputException(
          Place.NOWHERE.inFile(file),
          "the bodies of its elements take more than " + (most >> 20) + " MiB of memory",
          "Check the unit of its lengths; if that is right, give Java more memory, as in"
              + " java -Xmx8g, or export the deck and what is near it as a model of its own.");
    }
  }
}
