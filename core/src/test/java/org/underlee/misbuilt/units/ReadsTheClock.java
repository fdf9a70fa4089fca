package org.underlee.misbuilt.units;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Random;
import org.underlee.misbuilt.geom.CallsUnits;

/** Breaks every rule of {@link org.underlee.Architecture} once, to prove that each can fail. */
public final class ReadsTheClock {
  static int counter;

  static final StringBuilder SHARED = new StringBuilder();

  private ReadsTheClock() {}

  public static String everythingThatIsForbidden() {
    counter++;
    System.out.println(Instant.now());
    System.err.println(LocalDate.now());
    long now = System.currentTimeMillis() + System.nanoTime();
    double chance = Math.random() + new Random().nextDouble();
    return String.format("%d %f %s", now, chance, CallsUnits.NAME.toUpperCase());
  }
}
