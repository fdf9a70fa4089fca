package org.underlee.report;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.underlee.run.batch.ModelResult;
import org.underlee.units.Shares;

/** Writes what became of each of many models as one page that needs nothing beside it. */
public final class BatchHtml {
  private static final String STYLE =
      """
      body { font: 1rem/1.4 system-ui, sans-serif; margin: 2rem; color-scheme: light dark }
      table { border-collapse: collapse }
      th, td { padding: .3rem .8rem; text-align: right; border-bottom: 1px solid #8886 }
      th:first-child, td:first-child, .why { text-align: left }
      thead th { position: sticky; top: 0; background: Canvas }
      """;

  private BatchHtml() {}

  /**
   * Writes the table, failures first.
   *
   * @param job {@code survey}, {@code design} or {@code check}
   */
  public static String write(String job, List<ModelResult> results) {
    List<ModelResult> done = results.stream().filter(ModelResult::isDone).toList();
    List<ModelResult> failed = results.stream().filter(r -> !r.isDone()).toList();
    String title = job + " of " + results.size() + (results.size() == 1 ? " model" : " models");
    return "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"
        + "<meta name=\"viewport\" content=\"width=device-width\">\n<title>"
        + title
        + "</title>\n<style>\n"
        + STYLE
        + "</style></head>\n<body>\n<h1>"
        + title
        + "</h1>\n"
        + (failed.isEmpty() ? "" : failures(failed))
        + (done.isEmpty() ? "" : models(done))
        + "</body></html>\n";
  }

  private static String failures(List<ModelResult> failed) {
    return table(
        "Without a result",
        List.of("Model", "Outcome", "Why"),
        failed.stream()
            .map(r -> row(r.file(), r.outcome().word(), r.message()))
            .collect(Collectors.joining()));
  }

  private static String models(List<ModelResult> done) {
    return table(
        "Results",
        List.of("Model", "Decks", "Fields", "Bays", "Parts", "Dry", "Notes", "Warnings", "Errors"),
        done.stream().map(BatchHtml::model).collect(Collectors.joining()));
  }

  private static String model(ModelResult r) {
    ModelResult.Counts c = r.counts();
    String dry =
        c.dryFraction().isEmpty()
            ? ""
            : String.format(
                Locale.ROOT, "%.1f %%", Shares.percent(c.dryFraction().getAsDouble(), 1));
    return row(
        r.file(),
        c.decks(),
        c.fields(),
        c.bays(),
        c.parts(),
        dry,
        c.notes(),
        c.warnings(),
        c.errors());
  }

  private static String table(String name, List<String> head, String rows) {
    return "<h2>"
        + name
        + "</h2>\n<table><thead><tr>"
        + head.stream().map(h -> "<th scope=\"col\">" + h + "</th>").collect(Collectors.joining())
        + "</tr></thead>\n<tbody>\n"
        + rows
        + "</tbody></table>\n";
  }

  private static String row(Object... cells) {
    return java.util.Arrays.stream(cells)
        .map(c -> "<td" + (c instanceof String ? " class=\"why\"" : "") + ">" + text(c) + "</td>")
        .collect(Collectors.joining("", "<tr>", "</tr>\n"));
  }

  private static String text(Object value) {
    return value
        .toString()
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
