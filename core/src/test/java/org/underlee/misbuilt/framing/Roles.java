package org.underlee.misbuilt.framing;

/** Not a port. */
public final class Roles {
  private Roles() {}
}
