package org.underlee.geom;

import java.util.ArrayList;
import java.util.List;

/** A stretch of a line from {@code from} to {@code to}; empty when it runs backwards. */
public record Interval(double from, double to) {
  public double length() {
    return Math.max(0, to - from);
  }

  public double middle() {
    return (from + to) / 2;
  }

  public boolean isEmpty() {
    return !(to > from);
  }

  public Interval meet(Interval o) {
    return new Interval(Math.max(from, o.from), Math.min(to, o.to));
  }

  public boolean contains(double x) {
    return x >= from && x <= to;
  }

  /** From the nearer end; 0 within. */
  public double distance(double x) {
    return Math.max(0, Math.max(from - x, x - to));
  }

  public boolean contains(Interval o) {
    return from <= o.from && to >= o.to;
  }

  /** The least interval that holds both; neither may be empty. */
  public Interval join(Interval o) {
    return new Interval(Math.min(from, o.from), Math.max(to, o.to));
  }

  /** What is left of this when {@code o} is taken out: none, one or two pieces. */
  public List<Interval> without(Interval o) {
    List<Interval> left = new ArrayList<>(2);
    if (o.isEmpty() || meet(o).isEmpty()) {
      left.add(this);
      return left;
    }
    if (o.from > from) {
      left.add(new Interval(from, o.from));
    }
    if (o.to < to) {
      left.add(new Interval(o.to, to));
    }
    return left;
  }
}
