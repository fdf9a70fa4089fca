package org.underlee.command;

import java.io.PrintWriter;

/** A verb that another jar brings; found by ServiceLoader when that jar is on the class path. */
public interface Verb {
  /** The program itself, for a verb that needs what another verb does. */
  interface Program {
    /** Runs one verb, and gives back its exit code. */
    int run(PrintWriter out, PrintWriter err, String... args);
  }

  /** A picocli command. */
  Object command(Program underlee);
}
