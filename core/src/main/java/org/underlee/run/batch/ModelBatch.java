package org.underlee.run.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.underlee.finding.InputException;
import org.underlee.run.Version;
import org.underlee.step.Sha256;
import org.underlee.writeback.NotWrittenException;

/**
 * The same job on every model of some folders. One model's failure, whatever it is, ends no other's
 * work. At most {@code threads} models are in memory at once; of a finished one only its line is
 * kept.
 */
public final class ModelBatch {
  /** Told of each model as it is finished, in no order; never by two threads at once. */
  public interface Progress {
    void finished(ModelResult result, int done, int all, boolean fromJournal);
  }

  /** Digits that tell one setting from another. */
  private static final int KEY_LENGTH = 16;

  private final ModelJob job;
  private final int threads;
  private final Progress progress;

  public ModelBatch(ModelJob job, int threads, Progress progress) {
    this.job = job;
    this.threads = threads;
    this.progress = progress;
  }

  /**
   * Works through the folders.
   *
   * @param leftAside folders below them that hold no models to work on, such as where results go
   * @param journal where to keep what is finished, to go on from after a stop
   * @return a result a model, by name
   * @throws InputException when a folder is not there or holds no model
   * @throws NotWrittenException when the journal cannot be kept
   */
  public List<ModelResult> run(List<Path> folders, List<Path> leftAside, Optional<Path> journal) {
    List<ModelFiles.ModelFile> all = ModelFiles.in(folders, leftAside);
    List<ModelFiles.ModelFile> files =
        all.stream().filter(f -> job.isForCopies() || !ModelFiles.isCopy(f, all)).toList();
    Optional<BatchJournal> kept = journal.map(j -> BatchJournal.open(j, key()));
    try {
      return run(files, kept);
    } finally {
      kept.ifPresent(BatchJournal::close);
    }
  }

  private List<ModelResult> run(List<ModelFiles.ModelFile> files, Optional<BatchJournal> journal) {
    Count count = new Count(files.size());
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<ModelResult>> all = new ArrayList<>();
      files.forEach(f -> all.add(pool.submit(() -> one(f, journal, count))));
      List<ModelResult> results = new ArrayList<>();
      for (Future<ModelResult> future : all) {
        results.add(future.get());
      }
      return results;
    } catch (ExecutionException e) {
      throw e.getCause() instanceof RuntimeException known ? known : new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("stopped while models were read", e);
    } finally {
      pool.shutdownNow();
    }
  }

  private ModelResult one(ModelFiles.ModelFile file, Optional<BatchJournal> journal, Count count) {
    String sha256;
    try {
      sha256 = Sha256.hex(file.path());
    } catch (IOException e) {
      String why = "the file cannot be read: " + e.getMessage();
      return count.add(
          ModelResult.without(file.label(), "", ModelResult.Outcome.REFUSED, why), false);
    }
    Optional<ModelResult> known =
        journal.flatMap(j -> j.of(file.label(), sha256)).filter(r -> usable(r, file.label()));
    if (known.isPresent()) {
      return count.add(known.get(), true);
    }
    ModelResult result = worked(file, sha256);
    journal.ifPresent(j -> j.add(result));
    return count.add(result, false);
  }

  /** What failed for reasons outside the model is tried again. */
  private boolean usable(ModelResult known, String label) {
    return switch (known.outcome()) {
      case DONE -> job.stillThere(label);
      case REFUSED -> true;
      case NOT_WRITTEN, FAULT -> false;
    };
  }

  // Errors too: a model that exhausts memory or the stack must not end the work on the others.
  @SuppressWarnings("IllegalCatch")
  private ModelResult worked(ModelFiles.ModelFile file, String sha256) {
    try {
      return new ModelResult(
          file.label(), sha256, ModelResult.Outcome.DONE, job.of(file.path(), file.label()), "");
    } catch (InputException e) {
      return failed(file, sha256, ModelResult.Outcome.REFUSED, e.getMessage() + ". " + e.advice());
    } catch (NotWrittenException e) {
      return failed(
          file, sha256, ModelResult.Outcome.NOT_WRITTEN, e.getMessage() + ". " + e.advice());
    } catch (OutOfMemoryError e) {
      String why = "the model needs more memory than Java was given; run java with more, -Xmx4g";
      return failed(file, sha256, ModelResult.Outcome.FAULT, why);
    } catch (RuntimeException | StackOverflowError e) {
      return failed(file, sha256, ModelResult.Outcome.FAULT, "a fault in the program: " + e);
    }
  }

  private static ModelResult failed(
      ModelFiles.ModelFile file, String sha256, ModelResult.Outcome outcome, String why) {
    return ModelResult.without(file.label(), sha256, outcome, why.replaceAll("\\s+", " "));
  }

  /** A change of the program or of a setting makes old lines useless. */
  private String key() {
    return Version.number()
        + " "
        + Sha256.hex(job.settings().getBytes(StandardCharsets.UTF_8)).substring(0, KEY_LENGTH);
  }

  /** How many are finished. */
  private final class Count {
    private final int all;
    private int done;

    Count(int all) {
      this.all = all;
    }

    synchronized ModelResult add(ModelResult result, boolean fromJournal) {
      done++;
      progress.finished(result, done, all, fromJournal);
      return result;
    }
  }
}
