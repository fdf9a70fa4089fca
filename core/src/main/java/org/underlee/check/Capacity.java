package org.underlee.check;

import static org.underlee.kit.PanValue.DOWNSPOUT_DIAMETER;
import static org.underlee.kit.PanValue.GUTTER_DEPTH;
import static org.underlee.kit.PanValue.GUTTER_WIDTH;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.bay.Bay;
import org.underlee.finding.Finding;
import org.underlee.finding.Finding.Measure;
import org.underlee.finding.Fix;
import org.underlee.finding.Level;
import org.underlee.finding.Rule;
import org.underlee.layout.Link;
import org.underlee.layout.PartKind;
import org.underlee.units.Lengths;
import org.underlee.units.Quantity;
import org.underlee.units.Quantity.Kind;
import org.underlee.units.Words;

/**
 * The hardest rain that gutter, outlet and downspout carry away. Each piece of gutter takes its
 * share of the served bays' area by its length.
 *
 * <p>Gutter: Beij's formula for level rectangular gutters that fill along their length (National
 * Bureau of Standards RP644, 1934), with 1/2 in kept free at the rim. Outlet: the smaller of a weir
 * around its edge and an orifice at that depth (HEC-22, 7.3 and 10.3). Downspout: one square inch
 * carries an inch an hour from 1200 square feet.
 */
public final class Capacity implements Check {
  static final Rule GUTTER =
      new Rule(
          "gutter-too-small",
          Level.WARNING,
          "Beij, NBS RP644 (1934); 8 in/h, more than the 5-minute rain of ten years in most places",
          "The gutter runs over in rain that must be reckoned with.");

  static final Rule DOWNSPOUT =
      new Rule(
          "downspout-too-small",
          Level.WARNING,
          "HEC-22 weir and orifice; 1 sq in of downspout per 1200 sq ft at 1 in/h; 8 in/h",
          "An outlet or its downspout carries less than the rain that must be reckoned with.");

  /** 8 in/h. */
  private static final double RAIN = 8 * Lengths.INCH / 3600;

  private static final double FREEBOARD = Lengths.INCH / 2;
  private static final double GRAVITY = 9.80665;
  private static final double WEIR = 0.37;
  private static final double ORIFICE = 0.60;

  @Override
  public List<Rule> rules() {
    return List.of(GUTTER, DOWNSPOUT);
  }

  @Override
  public Answer of(CheckInput input) {
    List<Finding> found = new ArrayList<>();
    for (Assembled f : input.fields()) {
      double area = f.served().stream().mapToDouble(b -> area(f, b)).sum();
      double whole = f.all(PartKind.GUTTER).mapToDouble(p -> p.part().length()).sum();
      if (area > 0 && whole > 0) {
        double gutter = gutter(f, area / whole);
        double outlet = outlet(f, area / whole);
        if (gutter < RAIN) {
          found.add(finding(f, GUTTER, "the gutter", gutter));
        }
        if (outlet < RAIN) {
          found.add(finding(f, DOWNSPOUT, "an outlet with its downspout", outlet));
        }
      }
    }
    return new Answer(
        found,
        List.of(
            new SiteQuestion(
                "What rain must drains be made for here?",
                "Gutters and downspouts are looked at for 8 in an hour, and for no wall or"
                    + " roof that sheds onto the deck.",
                "your local code; NOAA Atlas 14")));
  }

  private static double area(Assembled f, Bay bay) {
    double v = bay.stretch().middle();
    List<Placed> pans = f.pansOf(bay);
    double run = pans.get(pans.size() - 1).box().max().y() - bay.stretch().from();
    return (bay.right().centre(v) - bay.left().centre(v)) * run;
  }

  /**
   * Rain that the longest piece carries, m/s.
   *
   * @param areaPerLength that runs into each metre of gutter
   */
  private static double gutter(Assembled f, double areaPerLength) {
    double length = f.all(PartKind.GUTTER).mapToDouble(p -> p.part().length()).max().orElse(0);
    double flow = beij(f.kit().get(GUTTER_WIDTH), f.kit().get(GUTTER_DEPTH) - FREEBOARD, length);
    return flow / (areaPerLength * length);
  }

  /** What a level rectangular gutter carries, m³/s: b = 0.0106 m^(-4/7) L^(3/28) (iA)^(5/14). */
  static double beij(double width, double depth, double length) {
    double feet = width / Lengths.FOOT;
    double ratio = Math.max(0, depth) / width;
    double perInchHour =
        Math.pow(
            feet / (0.0106 * Math.pow(ratio, -4.0 / 7) * Math.pow(length / Lengths.FOOT, 3.0 / 28)),
            14.0 / 5);
    return perInchHour * Lengths.FOOT * Lengths.FOOT * Lengths.INCH / 3600;
  }

  private static double outlet(Assembled f, double areaPerLength) {
    double diameter = f.kit().get(DOWNSPOUT_DIAMETER);
    double head = Math.max(0, f.kit().get(GUTTER_DEPTH) - FREEBOARD);
    double carried = Math.min(inlet(diameter, head), pipe(diameter));
    double longest =
        f.all(PartKind.OUTLET).mapToDouble(o -> into(f, o.part().id())).max().orElse(0);
    return longest > 0 ? carried / (areaPerLength * longest) : Double.POSITIVE_INFINITY;
  }

  /** m³/s into a round hole in the floor under a depth of water. */
  static double inlet(double diameter, double head) {
    double weir = WEIR * Math.sqrt(2 * GRAVITY) * Math.PI * diameter * Math.pow(head, 1.5);
    double orifice = ORIFICE * Math.PI / 4 * diameter * diameter * Math.sqrt(2 * GRAVITY * head);
    return Math.min(weir, orifice);
  }

  private static double pipe(double diameter) {
    double squareInches = Math.PI / 4 * diameter * diameter / (Lengths.INCH * Lengths.INCH);
    return squareInches * 1200 * Lengths.FOOT * Lengths.FOOT * Lengths.INCH / 3600;
  }

  /** Metres of gutter that run into an outlet. */
  private static double into(Assembled f, String outlet) {
    Set<String> from =
        f.layout().links().stream()
            .filter(l -> l.to().equals(outlet))
            .map(Link::from)
            .collect(Collectors.toSet());
    return f.all(PartKind.GUTTER)
        .filter(g -> from.contains(g.part().id()))
        .mapToDouble(g -> g.part().length())
        .sum();
  }

  private static Finding finding(Assembled f, Rule rule, String what, double rain) {
    return f.found(
        rule,
        Words.of("%s carries rain of %s and no more.", what, Quantity.of(Kind.RAIN, rain)),
        new Measure(Quantity.of(Kind.RAIN, rain), Quantity.of(Kind.RAIN, RAIN)),
        Fix.of("Use a kit with a larger gutter and downspout, or more outlets."));
  }
}
