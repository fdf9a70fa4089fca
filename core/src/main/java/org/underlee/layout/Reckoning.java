package org.underlee.layout;

import java.util.ArrayList;
import java.util.List;
import org.underlee.finding.Rule;
import org.underlee.kit.Kit;
import org.underlee.kit.KitNumber;
import org.underlee.layout.Derivation.KitValue;
import org.underlee.layout.Derivation.Op;
import org.underlee.layout.Derivation.Origin;
import org.underlee.layout.Derivation.Ruled;
import org.underlee.layout.Derivation.Step;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/** Writes down a derivation while its number is made. */
final class Reckoning {
  static final Origin OWN = new Ruled(Words.plain(Rule.OWN));

  private final Kit kit;
  private final List<Step> steps = new ArrayList<>();

  Reckoning(Kit kit) {
    this.kit = kit;
  }

  /** As far as another one has come. */
  Reckoning(Reckoning before) {
    this(before.kit);
    steps.addAll(before.steps);
  }

  Reckoning step(Op op, Words what, double value, Kind kind, Origin origin) {
    steps.add(new Step(op, what, Quantity.of(kind, value), origin));
    return this;
  }

  Reckoning from(Words what, double value, Origin origin) {
    return step(Op.IS, what, value, Kind.LENGTH, origin);
  }

  Reckoning from(KitNumber value) {
    return kitStep(Op.IS, value);
  }

  Reckoning plus(KitNumber value) {
    return kitStep(Op.PLUS, value);
  }

  Reckoning minus(KitNumber value) {
    return kitStep(Op.MINUS, value);
  }

  Reckoning plus(String what, double value, Origin origin) {
    return step(Op.PLUS, Words.plain(what), value, Kind.LENGTH, origin);
  }

  Reckoning minus(String what, double value, Origin origin) {
    return step(Op.MINUS, Words.plain(what), value, Kind.LENGTH, origin);
  }

  Reckoning times(String what, double factor, Origin origin) {
    return step(Op.TIMES, Words.plain(what), factor, Kind.FACTOR, origin);
  }

  Reckoning over(Words what, int count, Origin origin) {
    return step(Op.OVER, what, count, Kind.COUNT, origin);
  }

  private Reckoning kitStep(Op op, KitNumber value) {
    return step(op, Words.plain(value.meaning()), kit.get(value), Kind.LENGTH, origin(value));
  }

  /** Where a value of the kit comes from. */
  Origin origin(KitNumber value) {
    Kit.Sourced sourced = kit.values().get(value);
    return new KitValue(value.key(), sourced == null ? kit.id() : sourced.source());
  }

  /** The number so far. */
  double value() {
    return Derivation.value(steps);
  }

  Derivation gives(Dimension dimension) {
    return gives(dimension, 1);
  }

  Derivation gives(Dimension dimension, int ordinal) {
    return new Derivation(dimension, ordinal, steps);
  }

  /** A fall given as the run for one unit of it. */
  static Derivation fall(Kit kit, KitNumber runPerFall) {
    Reckoning r = new Reckoning(kit);
    return r.step(Op.IS, Words.of("one unit of fall"), 1, Kind.FACTOR, OWN)
        .step(
            Op.OVER,
            Words.plain(runPerFall.meaning()),
            kit.get(runPerFall),
            Kind.FACTOR,
            r.origin(runPerFall))
        .gives(Dimension.FALL);
  }
}
