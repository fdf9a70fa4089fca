package org.underlee.report;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Role;
import org.underlee.run.Survey;
import org.underlee.units.Lengths;
import org.underlee.units.Lengths.UnitSystem;

/** Writes a survey for people: each deck, its fields, and a row for each bay. */
public final class SurveyText {
  private SurveyText() {}

  public static String write(Survey survey, UnitSystem units) {
    StringBuilder out = new StringBuilder();
    out.append(
        String.format(
            Locale.ROOT,
            "%s: %s, unit of length %s%n",
            survey.source().file(),
            survey.source().ifcSchema(),
            survey.source().lengthUnit().toLowerCase(Locale.ROOT)));
    survey
        .request()
        .overrides()
        .ifPresent(
            o ->
                out.append(o.file())
                    .append(": ")
                    .append(count(o.told().globalIds().size(), "element"))
                    .append(" set right by you\n"));
    for (Deck deck : survey.framing().decks()) {
      out.append(
          String.format(
              Locale.ROOT,
              "%n%s%s: joist tops at %s; %s%n",
              deck.id(),
              deck.storey().map(s -> " (" + s.name() + ")").orElse(""),
              Lengths.format(deck.top(), units),
              (deck.outside().value() ? "outside: " : "not an outside deck: ")
                  + deck.outside().why()));
      deck.fields().forEach(f -> field(out, f, survey, units));
    }
    if (!survey.framing().notMeasured().isEmpty()) {
      out.append(
          String.format(
              Locale.ROOT,
              "%n%s could not be measured; --json lists them.%n",
              count(survey.framing().notMeasured().size(), "element")));
    }
    return out.toString().replace("\r\n", "\n");
  }

  private static void field(StringBuilder out, Field field, Survey survey, UnitSystem units) {
    out.append("\n  ")
        .append(field.id())
        .append(": ")
        .append(lines(field))
        .append(field.isAssumed() ? "; assumed, not in the model\n" : "\n");
    out.append(field.fallAssumed() ? "  the way water goes is " : "  water goes ")
        .append(field.fallWhy())
        .append('\n');
    field.highLine().ifPresent(h -> out.append("  ").append(h.words().in(units)).append('\n'));
    out.append("  ").append(supports(field)).append("\n\n");
    out.append(
        String.format(
            Locale.ROOT,
            "  %-5s %-9s %-14s %-14s %s%n",
            "bay",
            "between",
            "clear width",
            "length",
            "in it"));
    for (Bay bay : survey.baysOf(field).bays()) {
      out.append(row(bay, units));
    }
  }

  private static String lines(Field field) {
    Map<Integer, Long> plies =
        field.lines().stream()
            .collect(
                Collectors.groupingBy(
                    JoistLine::pliesAbreast, TreeMap::new, Collectors.counting()));
    String kinds =
        plies.entrySet().stream()
            .map(e -> e.getValue() + " " + plyWord(e.getKey()))
            .collect(Collectors.joining(", "));
    return field.lines().size() + " joist lines (" + kinds + ")";
  }

  private static String plyWord(int plies) {
    return switch (plies) {
      case 1 -> "single";
      case 2 -> "doubled";
      case 3 -> "tripled";
      default -> "of " + plies + " plies";
    };
  }

  private static String supports(Field field) {
    String held =
        Stream.of(Role.LEDGER, Role.RIM, Role.FLUSH_BEAM, Role.DROP_BEAM, Role.HEADER)
            .filter(r -> !field.supports(r).isEmpty())
            .map(r -> count(field.supports(r).size(), r.word().replace('-', ' ')))
            .collect(Collectors.joining(", "));
    return (held.isEmpty() ? "held by nothing that was found" : "held by " + held)
        + (field.posts().isEmpty() ? "" : ", on " + count(field.posts().size(), "post"))
        + " (plies counted singly)";
  }

  /** Less than this is the bow and twist of ordinary joists. */
  private static final double NARROWER = 0.003;

  private static String count(int n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }

  /** Where a bay is narrower between its ends than at both of them. */
  private static Stream<String> narrowest(Bay bay, UnitSystem units) {
    double least = bay.clearWidthNarrowest();
    return least < Math.min(bay.clearWidthHigh(), bay.clearWidthLow()) - NARROWER
        ? Stream.of("narrowest " + Lengths.format(least, units))
        : Stream.empty();
  }

  private static String row(Bay bay, UnitSystem units) {
    JoistLine left = bay.left();
    String width = Lengths.format(bay.clearWidthHigh(), units);
    String low = Lengths.format(bay.clearWidthLow(), units);
    String inIt =
        Stream.of(
                narrowest(bay, units),
                bay.blocking().stream().map(b -> "blocking at " + Lengths.format(b.at(), units)),
                bay.bridging().stream().map(b -> "bridging at " + Lengths.format(b.at(), units)),
                bay.crossings().stream()
                    .map(
                        c ->
                            c.element().ifcClass()
                                + " "
                                + Lengths.format(c.size(), units)
                                + " "
                                + c.way().word()
                                + " at "
                                + Lengths.format(c.at(), units)))
            .flatMap(s -> s)
            .collect(Collectors.groupingBy(s -> s, LinkedHashMap::new, Collectors.counting()))
            .entrySet()
            .stream()
            .map(e -> (e.getValue() > 1 ? e.getValue() + " x " : "") + e.getKey())
            .collect(Collectors.joining("; "));
    return String.format(
                Locale.ROOT,
                "  %-5s %-9s %-14s %-14s %s",
                bay.id(),
                left.id() + "-" + bay.right().id(),
                width.equals(low) ? width : width + "-" + low,
                Lengths.format(bay.length(), units),
                inIt)
            .stripTrailing()
        + "\n";
  }
}
