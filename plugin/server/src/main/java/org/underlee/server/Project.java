package org.underlee.server;

import java.util.List;
import java.util.Optional;

/**
 * A project as the server lists it.
 *
 * @param oid the server's number for it
 * @param name with the names of the projects above it: {@code House/Structure}
 * @param schema as the server writes it: {@code ifc2x3tc1} or {@code ifc4}
 * @param revisions the server's numbers for its revisions, oldest first
 */
public record Project(
    long oid, String name, Optional<Long> parent, String schema, List<Long> revisions) {
  public Project {
    revisions = List.copyOf(revisions);
  }

  /** The newest revision; empty when nothing has been checked in. */
  public Optional<Long> newest() {
    return revisions.isEmpty()
        ? Optional.empty()
        : Optional.of(revisions.get(revisions.size() - 1));
  }
}
