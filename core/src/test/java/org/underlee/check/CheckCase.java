package org.underlee.check;

/** An assembly that keeps a rule and one that breaks it. */
record CheckCase(String rule, CheckInput pass, CheckInput fail) {
  @Override
  public String toString() {
    return rule;
  }
}
