package org.underlee.samples.cases;

import java.util.List;
import java.util.Random;

/** One way that decks are framed, made at random with the truth about it. One class per case. */
public interface FramingCase {
  /** A few words of the trade; the row in the table of scores. */
  String name();

  /** A deck of this case; the same for the same random numbers. */
  Model make(Random random);

  /**
   * @param levels how many storeys the pieces point to
   */
  record Model(int levels, List<Piece> pieces, Truth truth) {}
}
