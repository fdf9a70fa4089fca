package org.underlee.command;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Arrays;
import java.util.List;

/** What the program did with a typed command. */
public record Typed(int code, String out, String err) {
  /** Arguments in pieces. */
  @SafeVarargs
  public static String[] joined(List<String>... pieces) {
    return Arrays.stream(pieces).flatMap(List::stream).toArray(String[]::new);
  }

  public static Typed run(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Underlee.run(new PrintWriter(out), new PrintWriter(err), args);
    return new Typed(code, out.toString(), err.toString());
  }
}
