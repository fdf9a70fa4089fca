package org.underlee.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.underlee.finding.Level;
import org.underlee.report.BatchCsv;
import org.underlee.report.BatchHtml;
import org.underlee.report.BatchJson;
import org.underlee.run.Overrides;
import org.underlee.run.batch.ModelBatch;
import org.underlee.run.batch.ModelJob;
import org.underlee.run.batch.ModelResult;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "batch",
    description =
        "Surveys, designs or checks every model in folders, and says what became of each."
            + " The word batch may be left out where a folder follows the job.",
    mixinStandardHelpOptions = true)
final class BatchCommand implements Callable<Integer> {
  /** What to do with each. */
  enum Verb {
    SURVEY,
    DESIGN,
    CHECK
  }

  private static final List<String> SUMMARIES = List.of(".csv", ".json", ".html");

  @Parameters(index = "0", paramLabel = "JOB", description = "survey, design or check.")
  Verb verb = Verb.SURVEY;

  @Parameters(
      index = "1..*",
      arity = "1..*",
      paramLabel = "FOLDER",
      description = "Folders of models, at any depth.")
  List<Path> folders = List.of();

  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      description = "Where design puts the drained copies, as they lie in the folders.")
  Optional<Path> out = Optional.empty();

  @Option(
      names = "--summary",
      paramLabel = "FILE",
      description = "The table as .csv, .json or .html; printed as CSV when not given.")
  Optional<Path> summary = Optional.empty();

  @Option(
      names = "--journal",
      paramLabel = "FILE",
      description = {
        "Keep a line for each finished model here, and pass over what is in it and has not changed."
      })
  Optional<Path> journal = Optional.empty();

  @Option(
      names = "--fail-on",
      paramLabel = "LEVEL",
      description = "End with 1 when a finding is at or above this level: note, warning or error.")
  Optional<Level> failOn = Optional.empty();

  @Mixin KitOption kit = new KitOption();

  @Mixin RainOption rain = new RainOption();

  @Spec CommandSpec spec = CommandSpec.create();

  static boolean knows(String verb) {
    return Arrays.stream(Verb.values()).anyMatch(v -> v.name().equalsIgnoreCase(verb));
  }

  @Override
  public Integer call() {
    summary.ifPresent(this::requireKnown);
    ModelJob job = job();
    int threads = Runtime.getRuntime().availableProcessors();
    ModelBatch batch = new ModelBatch(job, threads, this::progress);
    List<ModelResult> results = batch.run(folders, out.stream().toList(), journal);
    summary.ifPresentOrElse(f -> save(f, job, results), () -> print(BatchCsv.write(results)));
    long failed = results.stream().filter(r -> !r.isDone()).count();
    say(
        String.format(
            Locale.ROOT,
            "%d models: %d done, %d without a result.",
            results.size(),
            results.size() - failed,
            failed));
    return code(results);
  }

  private ModelJob job() {
    if (verb == Verb.DESIGN && out.isEmpty()) {
      throw slip("batch design needs --out FOLDER for the drained copies");
    }
    if (verb != Verb.DESIGN && out.isPresent()) {
      throw slip("--out is for batch design; use --summary for the table");
    }
    return switch (verb) {
      case SURVEY -> new ModelJob.SurveyEach();
      case DESIGN -> new ModelJob.DesignEach(kit.kit(), rain.storm(), out.orElseThrow());
      case CHECK -> new ModelJob.CheckEach();
    };
  }

  private void requireKnown(Path file) {
    if (ModelOptions.ending(file, SUMMARIES).isEmpty()) {
      throw slip("--summary " + file + ": name a .csv, .json or .html file");
    }
    if (file.toString().endsWith(Overrides.ENDING)) {
      throw slip("--summary " + file + ": files that end so say what is what in a model");
    }
  }

  private ParameterException slip(String what) {
    return new ParameterException(spec.commandLine(), what);
  }

  private void progress(ModelResult result, int done, int all, boolean fromJournal) {
    String how = result.isDone() ? "" : ": " + result.outcome().word() + ": " + result.message();
    say(done + "/" + all + " " + result.file() + (fromJournal ? " (from the journal)" : "") + how);
  }

  private void save(Path file, ModelJob job, List<ModelResult> results) {
    String text =
        switch (ModelOptions.ending(file, SUMMARIES)) {
          case ".csv" -> BatchCsv.write(results);
          case ".html" -> BatchHtml.write(job.name(), results);
          default -> BatchJson.write(job.name(), results);
        };
    RunFiles.of(spec).text(file, text);
  }

  /** The gravest of what happened. */
  private int code(List<ModelResult> results) {
    if (any(results, ModelResult.Outcome.FAULT)) {
      return ExitCode.BUG;
    }
    if (any(results, ModelResult.Outcome.NOT_WRITTEN)) {
      return ExitCode.NOT_WRITTEN;
    }
    if (any(results, ModelResult.Outcome.REFUSED)) {
      return ExitCode.INPUT;
    }
    return results.stream().anyMatch(this::grave) ? ExitCode.FINDINGS : ExitCode.CLEAN;
  }

  private boolean grave(ModelResult result) {
    ModelResult.Counts counts = result.counts();
    return failOn
        .map(
            level ->
                switch (level) {
                  case NOTE -> counts.notes() + counts.warnings() + counts.errors() > 0;
                  case WARNING -> counts.warnings() + counts.errors() > 0;
                  case ERROR -> counts.errors() > 0;
                })
        .orElse(false);
  }

  private static boolean any(List<ModelResult> results, ModelResult.Outcome outcome) {
    return results.stream().anyMatch(r -> r.outcome() == outcome);
  }

  private void print(String text) {
    PrintWriter to = spec.commandLine().getOut();
    to.print(text);
    to.flush();
  }

  private void say(String text) {
    spec.commandLine().getErr().println(text);
  }
}
