package org.underlee.samples;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Writes a plain deck of 3.6 m joists at 406.4 mm on centre for the timing of layouts. Arguments:
 * the file, then the number of bays.
 */
public final class PlainDeckFile {
  private static final double JOIST_MM = 3600;
  private static final double SPACING_MM = 406.4;

  private PlainDeckFile() {}

  public static void main(String[] args) throws IOException {
    int joists = Integer.parseInt(args[1]) + 1;
    Files.write(
        Path.of(args[0]),
        IfcEmitter.emit(SampleDecks.plain(JOIST_MM, SPACING_MM, joists), Mix.PLAIN));
  }
}
