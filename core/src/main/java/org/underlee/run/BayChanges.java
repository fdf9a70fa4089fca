package org.underlee.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.bay.Crossing;
import org.underlee.geom.Vec3;
import org.underlee.run.BayChange.Kind;
import org.underlee.run.FramingMatch.Found;
import org.underlee.run.FramingMatch.Placed;
import org.underlee.units.Quantity;
import org.underlee.units.Words;

/** Says what is different about a bay. */
final class BayChanges {
  /** Half a millimetre: what units and rounding of an export may do to a place. */
  private static final double SAME = 0.0005;

  private BayChanges() {}

  static BayChange of(Placed now, Optional<Found> found, PartChanges parts) {
    List<Words> why = new ArrayList<>();
    found.ifPresentOrElse(
        f -> differences(f.old(), now, why),
        () ->
            why.add(Words.of("no bay of the old export is between these joists or in this place")));
    Kind kind = found.isEmpty() ? Kind.NEW : why.isEmpty() ? Kind.KEPT : Kind.MOVED;
    String field = now.field().field().id();
    return new BayChange(
        field, now.bay().id(), kind, found.map(Found::by), why, parts.of(field, now.bay().id()));
  }

  static BayChange gone(Placed old, PartChanges parts) {
    String field = old.field().field().id();
    return new BayChange(
        field,
        old.bay().id(),
        Kind.GONE,
        Optional.empty(),
        List.of(Words.of("no bay of the new export is between its joists or in its place")),
        parts.of(field, old.bay().id()));
  }

  private static void differences(Placed old, Placed now, List<Words> why) {
    if (!old.name().equals(now.name())) {
      why.add(
          Words.plain("its field fell in two or was joined with another: it was " + old.name()));
    }
    Vec3 by = now.centre().minus(old.centre());
    double level = Math.hypot(by.x(), by.y());
    if (level > SAME) {
      why.add(Words.of("its middle is %s away", Quantity.length(level)));
    }
    if (Math.abs(by.z()) > SAME) {
      why.add(
          Words.of(
              by.z() > 0 ? "it is %s higher" : "it is %s lower",
              Quantity.length(Math.abs(by.z()))));
    }
    Bay a = old.bay();
    Bay b = now.bay();
    length("clear run", a.length(), b.length(), why);
    length("clear width at the high end", a.clearWidthHigh(), b.clearWidthHigh(), why);
    length("clear width at the low end", a.clearWidthLow(), b.clearWidthLow(), why);
    length("joist depth", a.left().depth(), b.left().depth(), why);
    count("blocking", a.blocking().size(), b.blocking().size(), why);
    count("things that cross it", a.crossings().size(), b.crossings().size(), why);
    noLongerBlocking(a, b, why);
    for (int i = 0; i < Math.min(a.blocking().size(), b.blocking().size()); i++) {
      length("station of blocking", a.blocking().get(i).at(), b.blocking().get(i).at(), why);
      length(
          "underside of blocking", a.blocking().get(i).bottom(), b.blocking().get(i).bottom(), why);
    }
    for (int i = 0; i < Math.min(a.crossings().size(), b.crossings().size()); i++) {
      length(
          "station of what crosses it", a.crossings().get(i).at(), b.crossings().get(i).at(), why);
      length(
          "place across of what crosses it",
          a.crossings().get(i).across(),
          b.crossings().get(i).across(),
          why);
      length(
          "size of what crosses it", a.crossings().get(i).size(), b.crossings().get(i).size(), why);
    }
  }

  /** Blocking that fits between the joists no more is still there, and in the way. */
  private static void noLongerBlocking(Bay a, Bay b, List<Words> why) {
    Set<String> blocks =
        a.blocking().stream().map(k -> k.member().id()).collect(Collectors.toSet());
    for (Crossing c : b.crossings()) {
      if (blocks.contains(c.element().globalId())) {
        why.add(
            Words.of(
                "blocking #%s does not fit between the joists any more, and is taken for something"
                    + " that crosses the bay",
                c.element().instance()));
      }
    }
  }

  private static void length(String what, double was, double is, List<Words> why) {
    if (Math.abs(was - is) > SAME) {
      why.add(Words.of(what + " is %s, was %s", Quantity.length(is), Quantity.length(was)));
    }
  }

  private static void count(String what, int was, int is, List<Words> why) {
    if (was != is) {
      why.add(Words.of(what + ": " + is + ", was " + was));
    }
  }
}
