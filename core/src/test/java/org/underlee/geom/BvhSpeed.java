package org.underlee.geom;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;

/**
 * Two sets of triangles for {@code docs/benchmarks/clash.md}: {@code write FOLDER TRIANGLES} makes
 * them, {@code run FOLDER} finds the pairs that meet and compares them with those of {@code
 * pairs.bin} where another program has left them there.
 */
public final class BvhSpeed {
  private static final int RUNS = 5;

  private BvhSpeed() {}

  public static void main(String[] args) throws IOException {
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

  private static Mesh mesh(Path file) throws IOException {
    ByteBuffer in = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
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
