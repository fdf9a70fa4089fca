package org.underlee.drainage.flow;

/**
 * What one method says that a part can carry.
 *
 * @param id of the method or table
 * @param accepted whether it may decide; one that may not is shown only
 * @param flow cubic metres per second
 */
public record Capacity(
    String id,
    String name,
    String code,
    String edition,
    Mark mark,
    String source,
    boolean accepted,
    double flow) {
  /** Its name, and how far it can be trusted where that is not as far as can be. */
  public String words() {
    return switch (mark) {
      case FROM_MEMORY -> name + " (" + mark.words() + ")";
      case GIVEN -> name + " (your own table)";
      case SEEN, DERIVED, PRACTICE -> name;
    };
  }
}
