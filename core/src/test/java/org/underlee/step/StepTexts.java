package org.underlee.step;

import java.nio.charset.StandardCharsets;

/** Small Part 21 files for tests. */
public final class StepTexts {
  private StepTexts() {}

  /** A whole IFC4 file with the given DATA lines. */
  public static String file(String... data) {
    return fileOf("IFC4", data);
  }

  public static String fileOf(String schema, String... data) {
    return "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION(('ViewDefinition [Reference]'),'2;1');\n"
        + "FILE_NAME('deck.ifc','2026-01-01T00:00:00',('A. Author'),('Office'),'P','S','none');\n"
        + "FILE_SCHEMA(('"
        + schema
        + "'));\nENDSEC;\nDATA;\n"
        + String.join("\n", data)
        + "\nENDSEC;\nEND-ISO-10303-21;\n";
  }

  public static StepFile read(String text) {
    return StepFile.of(text.getBytes(StandardCharsets.ISO_8859_1), "deck.ifc");
  }

  public static StepFile data(String... data) {
    return read(file(data));
  }
}
