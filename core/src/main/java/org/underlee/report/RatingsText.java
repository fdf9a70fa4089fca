package org.underlee.report;

import java.util.List;
import java.util.Locale;
import org.underlee.check.OutletRatings;
import org.underlee.drainage.flow.Downspout;
import org.underlee.drainage.flow.Rating;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;

/** Writes for people what every method says of an outlet: the least that may decide governs. */
public final class RatingsText {
  private RatingsText() {}

  public static String write(OutletRatings outlet, UnitSystem units) {
    StringBuilder out = new StringBuilder();
    out.append("\n  rated for ").append(Lengths.format(outlet.stretch(), units));
    out.append(
        " of gutter, and for the deck whose rain gets there with half of each wall beside it\n");
    for (Rating.Part part : Rating.Part.values()) {
      List<Rating> ratings = outlet.of(part);
      if (!ratings.isEmpty()) {
        out.append("    ")
            .append(part.name().toLowerCase(Locale.ROOT))
            .append(", which must carry ");
        out.append(flow(ratings.get(0).demand(), units))
            .append(": rain of ")
            .append(Quantity.of(Kind.RAIN, outlet.intensity()).in(units))
            .append(" on ")
            .append(Quantity.area(outlet.catchment(part)).in(units))
            .append('\n');
        if (part == Rating.Part.DOWNSPOUT) {
          out.append("    tables read at ").append(size(outlet.spout(), units)).append('\n');
        }
        ratings.forEach(r -> row(out, r, outlet.governs(r), units));
      }
    }
    return out.toString();
  }

  private static String size(Downspout spout, UnitSystem units) {
    String size = Lengths.format(spout.size(), units);
    return switch (spout.sizedBy()) {
      case NOMINAL -> size + ", the size that it is called by";
      case CLEAR ->
          size
              + ", what is clear in it with an allowance for its wall: by what size it is called is"
              + " not stated";
    };
  }

  private static void row(StringBuilder out, Rating r, boolean governs, UnitSystem units) {
    String role = r.capacity().accepted() ? "" : "; shown only";
    out.append(
        String.format(
            Locale.ROOT,
            "    %14s  %5.0f %%  %s%s\n",
            flow(r.capacity().flow(), units),
            Math.ceil(100 * r.use()),
            r.capacity().words(),
            governs ? "; governs" : role));
  }

  private static String flow(double cubicMetresPerSecond, UnitSystem units) {
    return Quantity.of(Kind.FLOW, cubicMetresPerSecond).in(units);
  }
}
