package org.underlee.step;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.LongSupplier;
import java.util.stream.IntStream;

/**
 * Rate of the index against counting the newlines of the same mapped file, and its memory. Not a
 * test: see docs/benchmarks/reading.md. Arguments: a file, or {@code generate FILE MEGABYTES}.
 */
public final class IndexSpeed {
  /** A file of 10 GB has about as many. */
  static final int RECORDS = 200_000_000;

  private static final int WARM_UP = 8;
  private static final int RUNS = 15;
  private static final double MEGA = 1e6;
  private static final int COUNTED = 1 << 20;

  private IndexSpeed() {}

  public static void main(String[] args) throws IOException {
    if (args[0].equals("generate")) {
      generate(Path.of(args[1]), (long) (Double.parseDouble(args[2]) * MEGA));
      return;
    }
    Path file = Path.of(args[0]);
    double megabytes = Files.size(file) / MEGA;
    StepBytes mapped = MappedBytes.of(file, "speed.ifc");
    StepSource source =
        new StepSource(mapped, "speed.ifc", StepLimits.STANDARD.withRecords(RECORDS));
    double lines = median(() -> newlines(mapped));
    long cpu = cpuNanos();
    double index = median(() -> new StepScanner(source).scan().index.count());
    double cpuSeconds = (cpuNanos() - cpu) / 1e9 / (WARM_UP + RUNS);
    double one = median(() -> new StepScanner(source, 1 << 30).scan().index.count());
    long before = used();
    StepIndex kept = new StepScanner(source).scan().index;
    long after = used();
    System.out.printf(
        Locale.ROOT,
        "%.1f MB, %d instances, %d processors%nnewlines %.0f MB/s%nindex %.0f MB/s (%.0f a processor second; one thread %.0f),"
            + " %.1f times the time of counting newlines%nindex keeps %.1f bytes an instance (%d)%n",
        megabytes,
        kept.count(),
        Runtime.getRuntime().availableProcessors(),
        megabytes / lines,
        megabytes / index,
        megabytes / cpuSeconds,
        megabytes / one,
        index / lines,
        (after - before) / (double) kept.count(),
        kept.find(1));
  }

  private static long cpuNanos() {
    return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
  }

  private static long used() {
    for (int i = 0; i < 3; i++) {
      System.gc();
    }
    return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
  }

  /** On all processors too. */
  static long newlines(StepBytes bytes) {
    int n = (int) ((bytes.size() + COUNTED - 1) / COUNTED);
    return IntStream.range(0, n)
        .parallel()
        .mapToLong(i -> newlines(bytes, (long) i * COUNTED))
        .sum();
  }

  private static final ThreadLocal<byte[]> BUFFER =
      ThreadLocal.withInitial(() -> new byte[COUNTED]);

  private static long newlines(StepBytes bytes, long from) {
    byte[] buffer = BUFFER.get();
    int n = (int) Math.min(COUNTED, bytes.size() - from);
    bytes.copy(from, buffer, n);
    int lines = 0;
    for (int i = 0; i < n; i++) {
      lines += buffer[i] == '\n' ? 1 : 0;
    }
    return lines;
  }

  private static double median(LongSupplier work) {
    double[] seconds = new double[RUNS];
    for (int i = -WARM_UP; i < RUNS; i++) {
      long start = System.nanoTime();
      if (work.getAsLong() < 0) {
        throw new IllegalStateException("no count is negative");
      }
      seconds[Math.max(i, 0)] = (System.nanoTime() - start) / 1e9;
    }
    Arrays.sort(seconds);
    return seconds[RUNS / 2];
  }

  /** A building's usual instances, of the mix and lengths that programs write. */
  private static void generate(Path file, long bytes) throws IOException {
    String[] text = StepTexts.file("\n").split("\n\n\n");
    long id = 0;
    try (OutputStream out = Files.newOutputStream(file)) {
      out.write(text[0].getBytes(StandardCharsets.US_ASCII));
      for (long written = 0; written < bytes; id += 10) {
        byte[] element = element(id).getBytes(StandardCharsets.US_ASCII);
        out.write(element);
        written += element.length;
      }
      out.write("\nENDSEC;\nEND-ISO-10303-21;\n".getBytes(StandardCharsets.US_ASCII));
    }
  }

  private static String element(long n) {
    return String.format(
        Locale.ROOT,
        """
        \n#%1$d=IFCCARTESIANPOINT((%11$d.25,-120.5,3000.));
        #%2$d=IFCDIRECTION((0.,0.,1.));
        #%3$d=IFCAXIS2PLACEMENT3D(#%1$d,#%2$d,$);
        #%4$d=IFCLOCALPLACEMENT(#1,#%3$d);
        #%5$d=IFCRECTANGLEPROFILEDEF(.AREA.,'2x8',$,38.1,184.15);
        #%6$d=IFCEXTRUDEDAREASOLID(#%5$d,#%3$d,#%2$d,3657.6);
        #%7$d=IFCSHAPEREPRESENTATION(#1,'Body','SweptSolid',(#%6$d));
        #%8$d=IFCPRODUCTDEFINITIONSHAPE($,$,(#%7$d));
        #%9$d=IFCBEAM('%12$022d',#1,'Joist %11$d',$,'2x8',#%4$d,#%8$d,'J-%11$d',.JOIST.);
        #%10$d=IFCRELDEFINESBYPROPERTIES('%13$022d',#1,$,$,(#%9$d),#1);""",
        n + 1,
        n + 2,
        n + 3,
        n + 4,
        n + 5,
        n + 6,
        n + 7,
        n + 8,
        n + 9,
        n + 10,
        n % 100_000,
        n,
        n + 1);
  }
}
