package org.underlee.step;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.underlee.finding.InputException;
import org.underlee.run.DeckRun;

/**
 * Damages models by seed and reads them: each mutant gives a result or a declared error, in time.
 * As a program: {@code Fuzz FIRST_SEED COUNT FOLDER…}; see docs/benchmarks/reading.md.
 */
public final class Fuzz {
  /** Larger files are left out: a mutant of them takes the time of a hundred of a small one. */
  static final long LARGEST = 200 << 10;

  /** A mutant that takes longer is a fault, whatever it gives. */
  private static final long SLOWEST_MILLIS = 5000;

  private static final int SHOWN_FAULTS = 40;

  /** How often a long run says how far it is. */
  private static final int REPORTED = 50_000;

  private final List<Path> files;
  private final List<byte[]> models = new ArrayList<>();
  private final AtomicInteger read = new AtomicInteger();
  private final AtomicInteger refused = new AtomicInteger();
  private final Queue<String> faults = new ConcurrentLinkedQueue<>();

  Fuzz(List<Path> files) throws IOException {
    this.files = files;
    for (Path file : files) {
      models.add(Files.readAllBytes(file));
    }
  }

  static List<Path> smallModels(Path folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(f -> f.toString().endsWith(".ifc") && f.toFile().length() < LARGEST)
          .filter(Fuzz::isRead)
          .sorted()
          .toList();
    }
  }

  /** Mutants of a file that is refused as it is would be refused for the same reason. */
  private static boolean isRead(Path file) {
    try {
      everything(Files.readAllBytes(file));
      return true;
    } catch (InputException e) {
      return false;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The faults among the mutants of some seeds, each with what is needed to see it again. */
  List<String> faults(long firstSeed, long count) {
    LongStream.range(firstSeed, firstSeed + count)
        .takeWhile(seed -> faults.size() < SHOWN_FAULTS)
        .forEach(this::tryOne);
    return List.copyOf(faults);
  }

  byte[] mutant(long seed) {
    return Mutation.mutant(models.get((int) (seed % models.size())), seed);
  }

  private void tryOne(long seed) {
    String what = files.get((int) (seed % files.size())) + ", seed " + seed;
    long start = ownNanos();
    try {
      everything(mutant(seed));
      read.incrementAndGet();
    } catch (InputException e) {
      refused.incrementAndGet();
      if (e.advice().isBlank() || e.place().file().isEmpty()) {
        fault(what + ": an error without place or advice: " + e.getMessage());
      }
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
      StackTraceElement[] trace = e.getStackTrace();
      fault(what + ": " + e + " at " + List.of(trace).subList(0, Math.min(6, trace.length)));
    }
    long millis = (ownNanos() - start) / 1_000_000;
    if (millis > SLOWEST_MILLIS) {
      fault(what + ": took " + millis + " ms");
    }
    if ((seed + 1) % REPORTED == 0) {
      System.out.println("seed " + seed + ", faults so far: " + faults.size());
    }
  }

  /** Told at once: a long run may never come to its end. */
  private void fault(String what) {
    faults.add(what);
    System.out.println(what);
  }

  /** Time of the thread itself, so that other work on the machine makes no fault. */
  private static long ownNanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  /** All that reads a model: each instance, each element, the whole survey. */
  static void everything(byte[] model) {
    StepFile file = StepFile.of(model, "mutant.ifc");
    for (int i = 0; i < file.count(); i++) {
      try {
        file.decode(i).values();
      } catch (InputException e) {
        // A value that cannot be read matters only where someone needs it.
        continue;
      }
    }
    DeckRun.survey(model, "mutant.ifc").model().elements();
  }

  int read() {
    return read.get();
  }

  int refused() {
    return refused.get();
  }

  public static void main(String[] args) throws IOException {
    List<Path> files = new ArrayList<>();
    for (int i = 2; i < args.length; i++) {
      files.addAll(smallModels(Path.of(args[i])));
    }
    Fuzz fuzz = new Fuzz(files);
    long start = System.nanoTime();
    List<String> faults = fuzz.faults(Long.parseLong(args[0]), Long.parseLong(args[1]));
    System.out.printf(
        Locale.ROOT,
        "%d files; %d mutants read, %d refused, %d faults, %.0f s%n",
        files.size(),
        fuzz.read(),
        fuzz.refused(),
        faults.size(),
        (System.nanoTime() - start) / 1e9);
    System.exit(faults.isEmpty() ? 0 : 1);
  }
}
