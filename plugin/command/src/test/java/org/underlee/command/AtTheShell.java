package org.underlee.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A folder with a sample deck in it, in which verbs are run as a shell runs them. */
abstract class AtTheShell {
  static final Path SAMPLES = Path.of(System.getProperty("underlee.root", "."), "samples");

  /** A project without anything in it. */
  static final String BARE =
      """
      ISO-10303-21;
      HEADER;
      FILE_DESCRIPTION((''),'2;1');
      FILE_NAME('','',(''),(''),'','','');
      FILE_SCHEMA(('%s'));
      ENDSEC;
      DATA;
      #1=IFCPROJECT('0000000000000000000001',$,'p',$,$,$,$,$,#2);
      #2=IFCUNITASSIGNMENT((#3));
      #3=IFCSIUNIT(*,.LENGTHUNIT.,$,.METRE.);
      ENDSEC;
      END-ISO-10303-21;
      """;

  @TempDir Path folder;
  Path deck;

  @BeforeEach
  void copyTheSample() throws IOException {
    deck = folder.resolve("deck.ifc");
    Files.copy(SAMPLES.resolve("pine-deck/pine-deck.ifc"), deck);
  }

  Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  Path bare() throws IOException {
    return file("bare.ifc", BARE.formatted("IFC4"));
  }

  static String sha256(Path file) throws Exception {
    return HexFormat.of()
        .formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
  }

  /** Every file of the folder with its hash. */
  Map<String, String> files() throws Exception {
    Map<String, String> all = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(folder)) {
      for (Path f : walk.filter(Files::isRegularFile).toList()) {
        all.put(folder.relativize(f).toString(), sha256(f));
      }
    }
    return all;
  }
}
