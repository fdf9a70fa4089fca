package org.underlee.drainage.flow;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.underlee.finding.InputException;
import org.underlee.finding.JsonInput;
import org.underlee.finding.Place;

/** A data file of this package, built in or the user's, and how its faults are told. */
record DataFile(String name, String text, String what) {
  private static final String ADVICE =
      "Correct the file; docs/how-to/rate-by-your-own-tables.md shows what belongs in it.";

  static DataFile builtIn(String name, String what) {
    try (InputStream in = DataFile.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the built-in file " + name + " is missing");
      }
      return new DataFile(name, new String(in.readAllBytes(), StandardCharsets.UTF_8), what);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void requireSchema(String found, String expected) {
    require(
        found.equals(expected), "its schema is \"" + found + "\", expected \"" + expected + "\"");
  }

  <T> T read(Class<T> shape) {
    return JsonInput.read(text, name, shape, what, ADVICE);
  }

  void require(boolean holds, String fault) {
    if (!holds) {
      throw new InputException(
          Place.NOWHERE.inFile(name), what + " cannot be used: " + fault, ADVICE);
    }
  }
}
