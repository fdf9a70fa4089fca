package org.underlee.report;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.underlee.finding.Rule;
import org.underlee.framing.BuildingElement;
import org.underlee.layout.Derivation;
import org.underlee.layout.Derivation.KitValue;
import org.underlee.layout.Derivation.Measured;
import org.underlee.layout.Derivation.Origin;
import org.underlee.layout.Derivation.Ruled;
import org.underlee.layout.Derivation.Step;
import org.underlee.layout.Part;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/**
 * Writes for people where each number of a part comes from: what was measured, each value of the
 * kit and each rule, the exact result, and the result as it is marked on a tape.
 */
public final class ExplainText {
  /** Elements named behind a measured value; more are counted. */
  private static final int MOST_ELEMENTS = 4;

  private ExplainText() {}

  public static String write(Part part, UnitSystem units) {
    StringBuilder out = new StringBuilder();
    out.append(part.label()).append("  ").append(part.kind().spoken());
    out.append("  ").append(part.id()).append('\n');
    out.append("  ").append(part.why().reason().in(units)).append('\n');
    part.cuts().forEach(c -> out.append("  ").append(c.words().in(units)).append('\n'));
    part.why().derivations().forEach(d -> derivation(out, d, units));
    return out.toString();
  }

  /** One line a part, for a name that several parts share. */
  public static String list(List<Part> parts) {
    return parts.stream()
        .map(
            p ->
                String.format(
                    Locale.ROOT, "%-14s %-14s %s\n", p.label(), p.kind().spoken(), p.id()))
        .collect(Collectors.joining());
  }

  private static void derivation(StringBuilder out, Derivation d, UnitSystem units) {
    out.append('\n').append("  ").append(d.dimension().words());
    out.append(d.ordinal() > 1 ? " " + d.ordinal() : "").append('\n');
    for (Step step : d.steps()) {
      line(out, step.op().sign(), step.value().exactlyIn(units), step.what().in(units));
      String from = from(step.origin(), units);
      out.append(from.isEmpty() ? "" : " ".repeat(33) + from + "\n");
    }
    String exact = d.result().exactlyIn(units);
    String shown =
        d.dimension().isCut() ? Lengths.cut(d.result().si(), units) : d.result().in(units);
    line(out, "=", exact, exact.equals(shown) ? "" : "shown as " + shown);
  }

  private static void line(StringBuilder out, String sign, String value, String what) {
    out.append(
        String.format(Locale.ROOT, "    %10s %14s  %s", sign, value, what).stripTrailing() + "\n");
  }

  private static String from(Origin origin, UnitSystem units) {
    if (origin instanceof Measured measured) {
      return "measured on " + elements(measured.elements());
    }
    if (origin instanceof KitValue kit) {
      return "kit " + kit.key() + ": " + kit.source();
    }
    if (origin instanceof Ruled ruled) {
      String source = ruled.source().in(units);
      return source.equals(Rule.OWN) ? "a rule of this program" : source;
    }
    return "";
  }

  private static String elements(List<BuildingElement> all) {
    List<BuildingElement> named = all.stream().distinct().limit(MOST_ELEMENTS).toList();
    long more = all.stream().distinct().count() - named.size();
    return named.stream().map(ExplainText::name).collect(Collectors.joining(", "))
        + (more > 0 ? " and " + more + " more" : "");
  }

  private static String name(BuildingElement e) {
    String name = e.name().isEmpty() ? "" : " \"" + e.name() + "\"";
    return e.isAssumed()
        ? e.ifcClass() + name + " (assumed)"
        : e.ifcClass() + name + " #" + e.instance() + " " + e.globalId();
  }
}
