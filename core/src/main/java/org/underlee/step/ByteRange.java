package org.underlee.step;

/** A stretch of a file's bytes: {@code from} inclusive, {@code to} exclusive. */
public record ByteRange(int from, int to) {
  public int length() {
    return to - from;
  }
}
