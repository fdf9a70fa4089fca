package org.underlee.report.packet;

import org.underlee.bay.Bay;
import org.underlee.framing.JoistLine;

/** One of the two joist faces of a bay. */
record BayFace(Bay bay, boolean left) {
  JoistLine line() {
    return left ? bay.left() : bay.right();
  }

  /** Height of the joist's underside at this face. */
  double bottom(double v) {
    return left
        ? bay.left().rightmost(v).shape().bottom().at(v)
        : bay.right().leftmost(v).shape().bottom().at(v);
  }

  double across(double v) {
    return left ? bay.left().rightAt(v) : bay.right().leftAt(v);
  }

  /** Measures along this face, whose last mark is at a station. */
  MarkMaker maker(Job.Place place, double last) {
    BeamDatum beam = BeamDatum.beyond(place.field(), across(last), last, bay.stretch().to());
    return new MarkMaker(bay.stretch().from(), beam, this::bottom);
  }
}
