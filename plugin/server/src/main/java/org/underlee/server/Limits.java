package org.underlee.server;

import java.time.Duration;

/**
 * How long the client waits.
 *
 * @param connect for the server to take a connection
 * @param answer for a short question to be answered
 * @param work for the server to read a model that was sent whole, or to begin writing one; 114 MB
 *     took it 134 s
 */
public record Limits(Duration connect, Duration answer, Duration work) {
  public static final Limits USUAL =
      new Limits(Duration.ofSeconds(10), Duration.ofSeconds(60), Duration.ofMinutes(30));
}
