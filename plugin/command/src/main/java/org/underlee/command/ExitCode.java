package org.underlee.command;

/** What the program ends with; part of the contract. */
final class ExitCode {
  static final int CLEAN = 0;
  static final int FINDINGS = 1;
  static final int USAGE = 2;
  static final int INPUT = 3;
  static final int NOT_WRITTEN = 4;
  static final int BUG = 70;

  private ExitCode() {}
}
