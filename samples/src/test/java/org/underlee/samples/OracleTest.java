package org.underlee.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every product of every public model beside {@code web-ifc}'s reading of it: box within 1 mm,
 * volume within 0.1 %, or the difference is in {@code oracle-differences.tsv} with who is right and
 * why. The largest are read only when asked for, by {@code -Dunderlee.largest} in bytes: each takes
 * up to a minute.
 *
 * <p>After a change that shifts differences, {@code -Dunderlee.rewrite=true} reads all and writes
 * the list again; new lines then have to be judged by hand.
 */
class OracleTest {
  private static final Path CORPUS = Path.of(System.getProperty("underlee.corpus", ""));
  private static final Path KEPT =
      Path.of(System.getProperty("underlee.root", ".."))
          .resolve("samples/src/test/resources/oracle-differences.tsv");

  private static final boolean REWRITE = Boolean.getBoolean("underlee.rewrite");
  private static final long LARGEST =
      REWRITE ? Long.MAX_VALUE : Long.getLong("underlee.largest", 5_000_000);

  /** Fewer would mean that folders were not found. */
  private static final int PRODUCTS_AT_LEAST = 10_000;

  @TempDir Path unzipped;

  @Test
  void everyProductIsReadAsTheWitnessReadsItOrTheDifferenceIsKept() throws Exception {
    assumeTrue(WebIfc.nodeAvailable(), WebIfc.SKIPPED);
    assumeTrue(
        Files.isDirectory(CORPUS.resolve("models")) && Files.isDirectory(CORPUS.resolve("edge")),
        "skipped: no public models");
    List<Path> files = files();
    List<Comparison.Difference> differences = new ArrayList<>();
    int compared = 0;
    for (Comparison.Result result : compare(files)) {
      compared += result.compared();
      differences.addAll(result.differences());
    }
    List<KeptDifferences.Line> found = KeptDifferences.lines(differences);
    if (REWRITE) {
      KeptDifferences.write(KEPT, found);
    }
    System.out.println(files.size() + " files, " + compared + " products of both readers");
    assertThat(compared).isGreaterThan(PRODUCTS_AT_LEAST);
    List<KeptDifferences.Line> kept =
        KeptDifferences.read(KEPT).stream()
            .filter(line -> isReadNow(CORPUS.resolve(line.file())))
            .toList();
    assertThat(found)
        .extracting(KeptDifferences.Line::found)
        .containsExactlyInAnyOrderElementsOf(
            kept.stream().map(KeptDifferences.Line::found).toList());
    assertThat(kept).allMatch(KeptDifferences.Line::isJudged);
  }

  private static List<Path> files() throws IOException {
    List<Path> files = new ArrayList<>();
    for (String folder : List.of("edge", "models")) {
      try (Stream<Path> all = Files.walk(CORPUS.resolve(folder))) {
        all.filter(OracleTest::isModel).sorted().forEach(files::add);
      }
    }
    return files;
  }

  private static boolean isModel(Path file) {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    return (name.endsWith(".ifc") || name.endsWith(".ifczip")) && isReadNow(file);
  }

  private static boolean isReadNow(Path file) {
    return file.toFile().length() <= LARGEST;
  }

  private List<Comparison.Result> compare(List<Path> files) throws Exception {
    Map<Path, Path> forWitness = new TreeMap<>();
    for (Path file : files) {
      forWitness.put(file, withoutZip(file).toAbsolutePath());
    }
    // One processor for each of the readers.
    CompletableFuture<List<Comparison.Reading>> ours =
        CompletableFuture.supplyAsync(() -> files.stream().map(OracleTest::reading).toList());
    WebIfc.Reading witness = WebIfc.read(List.copyOf(forWitness.values()), "none");
    Map<Path, List<WebIfc.Product>> theirs =
        witness.products().stream().collect(Collectors.groupingBy(WebIfc.Product::file));
    List<Comparison.Result> results = new ArrayList<>();
    for (int i = 0; i < files.size(); i++) {
      Path read = forWitness.getOrDefault(files.get(i), files.get(i));
      results.add(
          Comparison.of(
              ours.get().get(i),
              theirs.getOrDefault(read, List.of()),
              witness.unread().containsKey(read)));
    }
    return results;
  }

  private static Comparison.Reading reading(Path file) {
    return Comparison.Reading.of(file, CORPUS.relativize(file).toString().replace('\\', '/'));
  }

  /** The witness reads no archives. */
  private Path withoutZip(Path file) throws IOException {
    if (!file.toString().toLowerCase(Locale.ROOT).endsWith(".ifczip")) {
      return file;
    }
    Path model = unzipped.resolve(file.getFileName() + ".ifc");
    try (ZipFile zip = new ZipFile(file.toFile());
        InputStream in = zip.getInputStream(zip.entries().nextElement())) {
      Files.copy(in, model, StandardCopyOption.REPLACE_EXISTING);
    }
    return model;
  }
}
