package org.underlee.step;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.underlee.finding.InputException;
import org.underlee.run.DeckRun;

/** Reads a model that once was a fault, and says what comes of it: {@code KnownFault FILE}. */
public final class KnownFault {
  private KnownFault() {}

  public static void main(String[] args) throws IOException {
    Path file = Path.of(args[0]);
    try {
      DeckRun.survey(Files.readAllBytes(file), String.valueOf(file.getFileName()));
      System.out.println("read");
    } catch (InputException e) {
      System.out.println("refused: " + e.getMessage() + System.lineSeparator() + e.advice());
    }
  }
}
