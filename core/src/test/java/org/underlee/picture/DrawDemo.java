package org.underlee.picture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes the demo pictures into the folder that is the first argument, to be looked at. */
final class DrawDemo {
  private DrawDemo() {}

  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments[0]);
    Files.createDirectories(folder);
    Scene scene = DemoDeck.scene();
    RasterSettings settings = RasterSettings.of(1280, 800).withFineness(3).withThreads(2);
    double aspect = settings.aspect();
    Renderer renderer = Renderer.of(scene);
    save(folder.resolve("below.png"), renderer, Camera.fromBelow(scene, aspect), settings);
    save(folder.resolve("above.png"), renderer, Camera.fromAbove(scene, aspect), settings);
    save(folder.resolve("plan3d.png"), renderer, Camera.plan(scene, aspect), settings);
    Camera eye =
        Camera.perspective(new org.underlee.geom.Vec3(-0.35, -0.8, -0.35), scene.points(), aspect);
    save(folder.resolve("eye.png"), renderer, eye, settings);
    save(folder.resolve("eye1.png"), renderer, eye, settings.withFineness(1));
  }

  private static void save(Path file, Renderer renderer, Camera camera, RasterSettings settings)
      throws IOException {
    Files.write(file, Png.encode(renderer.draw(camera, settings)));
  }
}
