package org.underlee.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.drainage.OutletShare;
import org.underlee.drainage.flow.Rating;
import org.underlee.geom.Interval;
import org.underlee.layout.GutterCapacity.Share;
import org.underlee.layout.Link;
import org.underlee.layout.PartKind;

/**
 * A stretch of a field's gutter that falls to one outlet, and what runs into it.
 *
 * @param id of the outlet's part
 * @param along the gutter, in the field's frame
 * @param outlet its place there
 * @param shares where each bay is, its water comes in
 */
record Stretch(Assembled field, String id, Interval along, double outlet, List<Share> shares) {
  /** All of a field. */
  static List<Stretch> of(Assembled f, CheckInput input, GutterInRain rain) {
    List<Stretch> stretches = new ArrayList<>();
    f.all(PartKind.OUTLET)
        .forEach(
            o -> {
              Interval along = into(f, o.part().id());
              if (!along.isEmpty() && along.length() > 0) {
                List<Share> shares = shares(f, input, rain, o.part().id(), along);
                stretches.add(new Stretch(f, o.part().id(), along, middle(o), shares));
              }
            });
    return stretches;
  }

  boolean isCarried(GutterInRain rain) {
    return rain.carries(field.kit(), along, outlet, shares);
  }

  /** By every method. */
  List<Rating> ratings(GutterInRain rain) {
    return rain.ratings(field.kit(), along, outlet, shares);
  }

  /** By those that may decide. */
  List<Rating> accepted(GutterInRain rain) {
    return ratings(rain).stream().filter(r -> r.capacity().accepted()).toList();
  }

  private static double middle(Placed part) {
    return (part.box().min().x() + part.box().max().x()) / 2;
  }

  /** What reaches the outlet from each bay by the proof, or where there is none, by the plan. */
  private static List<Share> shares(
      Assembled f, CheckInput input, GutterInRain rain, String outlet, Interval stretch) {
    Optional<OutletShare> proved =
        input.proved().stream().filter(s -> s.outlet().equals(outlet)).findFirst();
    List<Share> shares = new ArrayList<>();
    for (Bay bay : f.served()) {
      double low = bay.stretch().to();
      Interval whole = new Interval(bay.left().centre(low), bay.right().centre(low));
      Interval own = whole.meet(stretch);
      if (!own.isEmpty() && own.length() > 0) {
        double area =
            proved
                .map(p -> p.bays().getOrDefault(bay.id(), 0.0))
                .orElse(area(f, bay) * own.length() / whole.length());
        double all =
            proved.isPresent()
                ? rain.fromWalls(f.field(), whole)
                : rain.fromAbove(f.field(), whole);
        double above = all * own.length() / whole.length();
        shares.add(new Share(own, area + above));
      }
    }
    return shares;
  }

  private static double area(Assembled f, Bay bay) {
    double v = bay.stretch().middle();
    List<Placed> pans = f.pansOf(bay);
    double run = pans.get(pans.size() - 1).box().max().y() - bay.stretch().from();
    return (bay.right().centre(v) - bay.left().centre(v)) * run;
  }

  /** Along the gutter, what runs into an outlet; empty when nothing does. */
  private static Interval into(Assembled f, String outlet) {
    Set<String> from =
        f.layout().links().stream()
            .filter(l -> l.to().equals(outlet))
            .map(Link::from)
            .collect(Collectors.toSet());
    return f.all(PartKind.GUTTER)
        .filter(g -> from.contains(g.part().id()))
        .map(g -> new Interval(g.box().min().x(), g.box().max().x()))
        .reduce(Interval::join)
        .orElse(new Interval(0, -1));
  }
}
