package org.underlee.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Objects;

/**
 * The program's own help, kept as text because making it takes several times as long as starting
 * Java. A jar that brings more verbs brings their lines too. Tests hold both against what the verbs
 * say of themselves.
 */
final class HelpText {
  static final String RESOURCE = "org/underlee/command/help.txt";

  /** Lines of verbs that another jar brings, as they stand below the others. */
  static final String MORE = "org/underlee/command/help-more.txt";

  private static final String COLOUR = "\u001b\\[[0-9;]*m";

  private HelpText() {}

  /** Whether these words ask for it. */
  static boolean isAskedBy(String... words) {
    return words.length == 1 && (words[0].equals("--help") || words[0].equals("-h"));
  }

  /** Prints it, in colour where the help of the verbs has it. */
  static void print(PrintWriter out, boolean coloured) {
    ClassLoader jars = HelpText.class.getClassLoader();
    try {
      print(out, coloured, Objects.requireNonNull(jars.getResource(RESOURCE)));
      for (URL more : Collections.list(jars.getResources(MORE))) {
        print(out, coloured, more);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    out.flush();
  }

  private static void print(PrintWriter out, boolean coloured, URL kept) throws IOException {
    try (InputStream in = kept.openStream()) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      (coloured ? text : plain(text)).lines().forEach(out::println);
    }
  }

  static String plain(String coloured) {
    return coloured.replaceAll(COLOUR, "");
  }
}
