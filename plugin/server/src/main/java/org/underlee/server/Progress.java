package org.underlee.server;

/** Told about once a second how far a transfer is. */
@FunctionalInterface
public interface Progress {
  Progress NONE = (done, total) -> {};

  /**
   * A transfer goes on.
   *
   * @param done bytes
   * @param total bytes; 0 when the server has not said
   */
  void bytes(long done, long total);
}
