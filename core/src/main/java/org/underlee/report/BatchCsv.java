package org.underlee.report;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.run.batch.ModelResult;

/** Writes what became of each of many models as one CSV table (RFC 4180, CR LF, UTF-8). */
public final class BatchCsv {
  private static final List<String> HEAD =
      List.of(
          "model",
          "outcome",
          "decks",
          "fields",
          "bays",
          "parts",
          "dry_fraction",
          "notes",
          "warnings",
          "errors",
          "why",
          "sha256");

  private BatchCsv() {}

  public static String write(List<ModelResult> results) {
    return Stream.concat(Stream.of(HEAD), results.stream().map(BatchCsv::row))
        .map(r -> r.stream().map(Csv::cell).collect(Collectors.joining(",")))
        .collect(Collectors.joining("\r\n", "", "\r\n"));
  }

  private static List<String> row(ModelResult r) {
    ModelResult.Counts c = r.counts();
    Stream<Integer> counts = Stream.of(c.decks(), c.fields(), c.bays(), c.parts());
    Stream<Integer> findings = Stream.of(c.notes(), c.warnings(), c.errors());
    return Stream.of(
            Stream.of(r.file(), r.outcome().word()),
            counts.map(n -> r.isDone() ? n.toString() : ""),
            Stream.of(dry(r)),
            findings.map(n -> r.isDone() ? n.toString() : ""),
            Stream.of(r.message(), r.sha256()))
        .flatMap(s -> s)
        .toList();
  }

  private static String dry(ModelResult r) {
    return r.counts().dryFraction().isEmpty()
        ? ""
        : Json.rounded(r.counts().dryFraction().getAsDouble(), DrainJson.DECIMALS).toPlainString();
  }
}
