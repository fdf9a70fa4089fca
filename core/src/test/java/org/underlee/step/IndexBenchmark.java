package org.underlee.step;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The index of a mapped file against counting its newlines: see docs/benchmarks/reading.md. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 2)
public class IndexBenchmark {
  @Param("model.ifc")
  public String file = "";

  private StepBytes bytes = new HeapBytes(new byte[0]);

  @Setup
  public void map() throws IOException {
    bytes = MappedBytes.of(Path.of(file), file);
  }

  @Benchmark
  public int index() {
    StepLimits limits = StepLimits.STANDARD.withRecords(IndexSpeed.RECORDS);
    return new StepScanner(new StepSource(bytes, file, limits)).scan().index.count();
  }

  @Benchmark
  public long newlines() {
    return IndexSpeed.newlines(bytes);
  }
}
