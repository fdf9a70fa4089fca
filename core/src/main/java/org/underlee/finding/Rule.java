package org.underlee.finding;

/**
 * What a finding is an instance of.
 *
 * @param id stable, lower case, with dashes: {@code bay-too-wide}
 * @param source the standard, edition and table, or {@code common practice}, or {@code Underlee}
 * @param meaning one line for people: when it is found, and what follows from it
 */
public record Rule(String id, Level level, String source, String meaning) {
  /** For rules about what this program can read or do. */
  public static final String OWN = "this program";

  public static final String COMMON_PRACTICE = "common practice";
}
