package org.underlee.geom;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;

/**
 * Two sets of triangles for {@code docs/benchmarks/clash.md}: {@code write FOLDER TRIANGLES} makes
 * them, {@code run FOLDER} finds the pairs that meet and compares them with those of {@code
 * pairs.bin} where another program has left them there, {@code grow} says how the time grows.
 */
public final class BvhSpeed {
  private static final int RUNS = 5;
  private static final int SIZES = 5;
  private static final int SMALLEST = 12_500;

  private BvhSpeed() {}

  public static void main(String[] args) throws IOException {
    if (args[0].equals("grow")) {
      grow();
      return;
    }
    Path folder = Path.of(args[1]);
    if (args[0].equals("write")) {
      int count = Integer.parseInt(args[2]);
      Files.createDirectories(folder);
      Files.write(folder.resolve("a.bin"), soup(1, count));
      Files.write(folder.resolve("b.bin"), soup(2, count));
    } else {
      run(folder);
    }
  }

  /** Triangles that each meet about one of the other set; coordinates that a float holds. */
  private static byte[] soup(long seed, int count) {
    Random random = new Random(seed);
    double size = 1.1 / Math.cbrt(count);
    ByteBuffer out = ByteBuffer.allocate(36 * count).order(ByteOrder.LITTLE_ENDIAN);
    for (int t = 0; t < count; t++) {
      double[] middle = {random.nextDouble(), random.nextDouble(), random.nextDouble()};
      for (int i = 0; i < 9; i++) {
        out.putFloat((float) (middle[i % 3] + size * (random.nextDouble() - 0.5) * 2));
      }
    }
    return out.array();
  }

  private static void grow() {
    seconds(SMALLEST, 4 * RUNS); // compiled by then
    double[] sizes = new double[SIZES];
    double[] seconds = new double[SIZES];
    for (int i = 0; i < SIZES; i++) {
      int count = SMALLEST << i;
      sizes[i] = count;
      seconds[i] = seconds(count, RUNS);
      System.out.printf("%d triangles a side: %.3f s of one processor%n", count, seconds[i]);
    }
    System.out.printf("exponent %.3f%n", exponent(sizes, seconds));
  }

  /** The slope of the straight line through the logarithms, by least squares. */
  static double exponent(double[] sizes, double[] seconds) {
    double x = Arrays.stream(sizes).map(Math::log).average().orElseThrow();
    double y = Arrays.stream(seconds).map(Math::log).average().orElseThrow();
    double up = 0;
    double down = 0;
    for (int i = 0; i < sizes.length; i++) {
      up += (Math.log(sizes[i]) - x) * (Math.log(seconds[i]) - y);
      down += (Math.log(sizes[i]) - x) * (Math.log(sizes[i]) - x);
    }
    return up / down;
  }

  /**
   * The least processor time of some runs, both trees and all pairs: on one thread, whose own time
   * other programs do not count in.
   */
  static double seconds(int count, int runs) {
    Mesh a = mesh(soup(1, count));
    Mesh b = mesh(soup(2, count));
    ForkJoinPool one = new ForkJoinPool(1);
    try {
      double least = Double.POSITIVE_INFINITY;
      for (int i = 0; i < runs; i++) {
        least = Math.min(least, one.submit(() -> once(a, b)).join());
      }
      return least;
    } finally {
      one.shutdown();
    }
  }

  private static double once(Mesh a, Mesh b) {
    var threads = ManagementFactory.getThreadMXBean();
    long start = threads.getCurrentThreadCpuTime();
    int[] pairs = Bvh.of(a).meeting(Bvh.of(b));
    long end = threads.getCurrentThreadCpuTime();
    if (pairs.length < a.triangleCount()) {
      throw new IllegalStateException("these sets should meet more often");
    }
    return (end - start) / 1e9;
  }

  private static Mesh mesh(Path file) throws IOException {
    return mesh(Files.readAllBytes(file));
  }

  private static Mesh mesh(byte[] bytes) {
    ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    double[] xyz = new double[in.remaining() / 4];
    for (int i = 0; i < xyz.length; i++) {
      xyz[i] = in.getFloat();
    }
    int[] corners = new int[xyz.length / 3];
    Arrays.setAll(corners, i -> i);
    return new Mesh(xyz, corners);
  }

  private static void run(Path folder) throws IOException {
    Mesh a = mesh(folder.resolve("a.bin"));
    Mesh b = mesh(folder.resolve("b.bin"));
    int[] pairs = {};
    for (int i = 0; i < RUNS; i++) {
      long start = System.nanoTime();
      Bvh treeA = Bvh.of(a);
      Bvh treeB = Bvh.of(b);
      long built = System.nanoTime();
      pairs = treeA.meeting(treeB);
      long end = System.nanoTime();
      System.out.printf(
          "build %.3f s, pairs %.3f s, %d pairs%n",
          (built - start) / 1e9, (end - built) / 1e9, pairs.length / 2);
    }
    Path other = folder.resolve("pairs.bin");
    if (Files.exists(other)) {
      compare(sorted(pairs), sorted(ints(Files.readAllBytes(other))));
    }
  }

  private static int[] ints(byte[] bytes) {
    int[] all = new int[bytes.length / 4];
    ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asIntBuffer().get(all);
    return all;
  }

  private static long[] sorted(int[] pairs) {
    long[] keys = new long[pairs.length / 2];
    Arrays.setAll(keys, i -> (long) pairs[2 * i] << 32 | pairs[2 * i + 1]);
    Arrays.sort(keys);
    return keys;
  }

  private static void compare(long[] ours, long[] theirs) {
    long only = Arrays.stream(ours).filter(k -> Arrays.binarySearch(theirs, k) < 0).count();
    long missed = Arrays.stream(theirs).filter(k -> Arrays.binarySearch(ours, k) < 0).count();
    System.out.printf(
        "%d pairs here, %d there; %d only here, %d only there%n",
        ours.length, theirs.length, only, missed);
  }
}
