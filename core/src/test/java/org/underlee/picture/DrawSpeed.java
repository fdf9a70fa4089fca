package org.underlee.picture;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.underlee.geom.Vec3;

/**
 * Prints how fast a field of boxes is drawn, with 12 triangles and 12 edges each: 16,667 (200,004
 * triangles), or as many as its argument says.
 */
final class DrawSpeed {
  private static final int BOXES = 16_667;
  private static final int WARM = 40;
  private static final int FRAMES = 20;

  private DrawSpeed() {}

  public static void main(String[] arguments) {
    List<Shape> shapes = new ArrayList<>();
    int boxes = arguments.length == 0 ? BOXES : Integer.parseInt(arguments[0]);
    int side = (int) Math.ceil(Math.sqrt(boxes));
    for (int i = 0; i < boxes; i++) {
      double x = i % side;
      double y = i / side;
      double z = i * 7919L % 13 / 2.0;
      shapes.add(
          new Shape(
              i + 1,
              "box",
              DemoDeck.block(x, y, z, x + 0.7, y + 0.7, z + 0.7),
              Palette.JOIST,
              true));
    }
    long start = System.nanoTime();
    Renderer renderer = Renderer.of(Scene.of(shapes));
    print("prepare", (System.nanoTime() - start) / 1e6);
    List<Vec3> points = Scene.of(shapes).points();
    for (int fineness = 1; fineness <= 2; fineness++) {
      for (int threads = 1; threads <= 2; threads++) {
        RasterSettings settings =
            RasterSettings.of(1280, 800).withFineness(fineness).withThreads(threads);
        print("fineness " + fineness + ", threads " + threads, mean(renderer, points, settings));
      }
    }
  }

  private static double mean(Renderer renderer, List<Vec3> points, RasterSettings settings) {
    List<Camera> cameras =
        IntStream.range(0, WARM + FRAMES)
            .mapToObj(i -> 0.6 + i * 0.05)
            .map(turn -> new Vec3(Math.cos(turn), Math.sin(turn), 0.55))
            .map(from -> Camera.perspective(from, points, settings.aspect()))
            .toList();
    long start = 0;
    long cpu = 0;
    for (int i = 0; i < WARM + FRAMES; i++) {
      if (i == WARM) {
        start = System.nanoTime();
        cpu = cpuTime();
      }
      renderer.draw(cameras.get(i), settings);
    }
    print("  processor time", (cpuTime() - cpu) / 1e6 / FRAMES);
    return (System.nanoTime() - start) / 1e6 / FRAMES;
  }

  private static long cpuTime() {
    return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
  }

  private static void print(String what, double ms) {
    System.out.printf(Locale.ROOT, "%s: %.1f ms (%.0f a second)%n", what, ms, 1000 / ms);
  }
}
