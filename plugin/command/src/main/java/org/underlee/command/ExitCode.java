package org.underlee.command;

/** What the program ends with; part of the contract. */
public final class ExitCode {
  public static final int CLEAN = 0;
  public static final int FINDINGS = 1;
  public static final int USAGE = 2;
  public static final int INPUT = 3;
  public static final int NOT_WRITTEN = 4;
  public static final int SERVER = 5;
  public static final int BUG = 70;

  private ExitCode() {}
}
