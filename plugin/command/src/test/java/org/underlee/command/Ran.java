package org.underlee.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.stream.Stream;

/** A run of the command, and what it printed. */
record Ran(int code, String out, String err) {
  /** Runs it with these words. */
  static Ran run(Object... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code =
        Underlee.run(
            new PrintWriter(out),
            new PrintWriter(err),
            Stream.of(args).map(Object::toString).toArray(String[]::new));
    return new Ran(code, out.toString(), err.toString());
  }

  JsonNode json() throws IOException {
    return new ObjectMapper().readTree(out);
  }

  List<String> rows() {
    return out.lines().toList();
  }
}
