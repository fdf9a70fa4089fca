package org.underlee.check;

import java.util.Comparator;
import java.util.List;
import org.underlee.drainage.flow.Downspout;
import org.underlee.drainage.flow.Rating;

/**
 * What every method says of an outlet, its downspout, and the gutter that falls to it.
 *
 * @param outlet the part's id
 * @param stretch of gutter, metres
 * @param intensity of the rain, m/s
 * @param spout that it leads to
 * @param ratings of all methods and tables, those that may not decide among them
 */
public record OutletRatings(
    String outlet, double stretch, double intensity, Downspout spout, List<Rating> ratings) {
  public OutletRatings {
    ratings = List.copyOf(ratings);
  }

  /** Of every outlet of a layout that takes water. */
  public static List<OutletRatings> of(CheckInput input) {
    GutterInRain rain = input.gutters();
    return input.fields().stream()
        .flatMap(f -> Stretch.of(f, input, rain).stream())
        .map(
            s ->
                new OutletRatings(
                    s.id(),
                    s.along().length(),
                    input.storm().intensity(),
                    rain.spout(s.field().kit()),
                    s.ratings(rain)))
        .filter(r -> !r.ratings.isEmpty())
        .toList();
  }

  /** Square metres whose rain a part must carry: deck, and half of the walls beside it. */
  public double catchment(Rating.Part part) {
    return of(part).stream().mapToDouble(r -> r.demand() / intensity).findFirst().orElse(0);
  }

  /** Of one part, what carries least first. */
  public List<Rating> of(Rating.Part part) {
    return ratings.stream()
        .filter(r -> r.part() == part)
        .sorted(Comparator.comparingDouble(Rating::use).reversed())
        .toList();
  }

  /** Whether it is the least of those that may decide on its part. */
  public boolean governs(Rating rating) {
    return of(rating.part()).stream().filter(r -> r.capacity().accepted()).findFirst().stream()
        .anyMatch(rating::equals);
  }
}
