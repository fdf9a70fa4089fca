package org.underlee.panel;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import javafx.animation.AnimationTimer;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;
import org.underlee.panel.host.FileHost;
import org.underlee.panel.model.Memory;
import org.underlee.panel.model.Result;
import org.underlee.panel.view.FileAsk;
import org.underlee.panel.view.PanelWindow;

/**
 * Prints how fast the panel follows: {@code PanelSpeed$Start MODEL} opens a model, then drags the
 * fall for ten seconds as fast as the panel shows it.
 */
public final class PanelSpeed extends Application {
  private static final long DRAG_SECONDS = 10;

  private final AtomicLong longestStall = new AtomicLong();
  private final AtomicLong longestWork = new AtomicLong();
  private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
  private long workBefore;
  private final AtomicInteger layouts = new AtomicInteger();
  private final AtomicInteger pictures = new AtomicInteger();
  private final CountDownLatch firstPicture = new CountDownLatch(1);
  private final CountDownLatch whole = new CountDownLatch(1);

  /** The class to start: JavaFX refuses one that is an application itself on the class path. */
  public static final class Start {
    private Start() {}

    public static void main(String[] args) {
      launch(PanelSpeed.class, args);
    }
  }

  @Override
  public void start(Stage stage) throws Exception {
    Path model = Path.of(getParameters().getRaw().get(0));
    FileHost host = new FileHost(Optional.empty());
    Path folder = Files.createTempDirectory("panel-speed");
    PanelWindow window = new PanelWindow(stage, host, new Memory(folder), FileAsk.over(stage));
    window
        .model()
        .picture()
        .image()
        .addListener(
            (o, before, now) -> {
              pictures.incrementAndGet();
              firstPicture.countDown();
            });
    window
        .model()
        .session()
        .result()
        .addListener(
            (o, before, now) -> {
              layouts.incrementAndGet();
              if (now.filter(Result::isWhole).isPresent()) {
                whole.countDown();
              }
            });
    stage.show();
    Thread thread = new Thread(() -> run(window, host, model), "speed");
    thread.setDaemon(true);
    thread.start();
  }

  /**
   * Beats on the screen's thread: the longest time between two is the longest stall; the most
   * processor time between two is what of it is our own, and not the wait of a busy machine.
   */
  private void watch() {
    Thread beat =
        new Thread(
            () -> {
              try {
                while (true) {
                  CountDownLatch done = new CountDownLatch(1);
                  long asked = System.nanoTime();
                  Platform.runLater(
                      () -> {
                        long work = threads.getCurrentThreadCpuTime();
                        longestWork.accumulateAndGet(work - workBefore, Math::max);
                        workBefore = work;
                        done.countDown();
                      });
                  done.await();
                  longestStall.accumulateAndGet(System.nanoTime() - asked, Math::max);
                  Thread.sleep(2);
                }
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            },
            "beat");
    beat.setDaemon(true);
    beat.start();
  }

  private void run(PanelWindow window, FileHost host, Path model) {
    try {
      TimeUnit.SECONDS.sleep(3);
      watch();
      TimeUnit.SECONDS.sleep(1);
      longestStall.set(0);
      longestWork.set(0);
      long start = System.nanoTime();
      long before = processorTime();
      Platform.runLater(() -> host.open(model));
      firstPicture.await();
      say("first picture %.1f s", (System.nanoTime() - start) / 1e9);
      say("  of processor time, all threads together, %.1f s", (processorTime() - before) / 1e9);
      say("longest stall until then %.0f ms", longestStall.get() / 1e6);
      say("  of processor time %.0f ms", longestWork.get() / 1e6);
      whole.await();
      say("whole design %.1f s", (System.nanoTime() - start) / 1e9);
      TimeUnit.SECONDS.sleep(2);
      say("longest stall while opening %.0f ms", longestStall.getAndSet(0) / 1e6);
      say("  of processor time %.0f ms", longestWork.getAndSet(0) / 1e6);
      drag(window);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      Platform.exit();
    }
  }

  private void drag(PanelWindow window) throws InterruptedException {
    Platform.runLater(
        () ->
            new AnimationTimer() {
              private int step;

              @Override
              public void handle(long now) {
                window.model().dragFall(60 + step++ % 80);
              }
            }.start());
    TimeUnit.SECONDS.sleep(3);
    layouts.set(0);
    pictures.set(0);
    longestStall.set(0);
    longestWork.set(0);
    long before = processorTime();
    TimeUnit.SECONDS.sleep(DRAG_SECONDS);
    say(
        "processor time for one layout shown, all threads together, %.0f ms",
        (processorTime() - before) / 1e6 / Math.max(1, layouts.get()));
    say("layouts shown a second while dragging %.1f", layouts.get() / (double) DRAG_SECONDS);
    say("pictures shown a second while dragging %.1f", pictures.get() / (double) DRAG_SECONDS);
    say("longest stall while dragging %.0f ms", longestStall.get() / 1e6);
    say("  of processor time %.0f ms", longestWork.get() / 1e6);
  }

  private static long processorTime() {
    return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
  }

  private static void say(String words, double number) {
    System.out.printf(Locale.ROOT, words + "%n", number);
  }
}
