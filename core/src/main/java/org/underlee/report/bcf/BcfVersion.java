package org.underlee.report.bcf;

/** The editions of the format that are written. */
public enum BcfVersion {
  V2_1("2.1"),
  V3_0("3.0");

  private final String id;

  BcfVersion(String id) {
    this.id = id;
  }

  /** As in {@code bcf.version}. */
  public String id() {
    return id;
  }

  boolean isOld() {
    return this == V2_1;
  }
}
