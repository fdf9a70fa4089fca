package org.underlee.command;

import java.io.PrintWriter;
import java.io.StringWriter;

/** What the program did with a typed command. */
public record Typed(int code, String out, String err) {
  public static Typed run(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Underlee.run(new PrintWriter(out), new PrintWriter(err), args);
    return new Typed(code, out.toString(), err.toString());
  }
}
