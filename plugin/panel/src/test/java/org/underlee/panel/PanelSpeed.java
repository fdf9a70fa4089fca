package org.underlee.panel;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import javafx.animation.AnimationTimer;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;
import org.underlee.panel.host.FileHost;
import org.underlee.panel.model.Memory;
import org.underlee.panel.model.PanelModel;
import org.underlee.panel.model.Progress;
import org.underlee.panel.model.Result;
import org.underlee.panel.view.FileAsk;
import org.underlee.panel.view.PanelWindow;

/**
 * Prints how fast the panel follows: {@code PanelSpeed$Start MODEL} opens a model, then drags the
 * fall for ten seconds as fast as the panel shows it. An update is a picture that shows the deck at
 * hand laid out anew; the other decks are as they were until the hand rests. With {@code
 * -Dunrehearsed=true} it opens as with a model named on the command line; with {@code -Dstalls=50}
 * it tells what went on in stalls of 50 ms and more; with {@code -Dbefore=20} it drags for twenty
 * seconds before it counts.
 */
public final class PanelSpeed extends Application {
  private static final long DRAG_SECONDS = 10;

  /** Of dragging, before it is counted. */
  private static final long BEFORE_SECONDS = 3;

  private final Stalls stalls = new Stalls(Long.getLong("stalls", Long.MAX_VALUE));
  private final AtomicInteger updates = new AtomicInteger();
  private final AtomicInteger allLaidOut = new AtomicInteger();
  private final CountDownLatch rehearsed = new CountDownLatch(1);
  private final CountDownLatch framed = new CountDownLatch(1);
  private final CountDownLatch partly = new CountDownLatch(1);
  private final CountDownLatch laidOut = new CountDownLatch(1);
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
    PanelModel panel = window.model();
    panel.rehearsed().addListener((o, before, now) -> rehearsed.countDown());
    panel.picture().image().addListener((o, before, now) -> firstPicture.countDown());
    panel.picture().shownEdition().addListener((o, before, now) -> updates.incrementAndGet());
    panel
        .session()
        .result()
        .addListener((o, before, now) -> now.map(Result::progress).ifPresent(this::count));
    stage.show();
    Thread thread = new Thread(() -> run(window, host, model), "speed");
    thread.setDaemon(true);
    thread.start();
  }

  private void count(Progress progress) {
    switch (progress) {
      case FRAMED -> framed.countDown();
      case PARTLY -> partly.countDown();
      case LAID_OUT -> {
        partly.countDown();
        laidOut.countDown();
        allLaidOut.incrementAndGet();
      }
      case WHOLE -> whole.countDown();
    }
  }

  private void run(PanelWindow window, FileHost host, Path model) {
    try {
      if (!Boolean.getBoolean("unrehearsed")) {
        Platform.runLater(window.model()::rehearse);
        rehearsed.await();
      }
      TimeUnit.SECONDS.sleep(2);
      stalls.watch();
      TimeUnit.SECONDS.sleep(1);
      tellStalls("before opening");
      long start = System.nanoTime();
      long before = processorTime();
      Platform.runLater(() -> host.open(model));
      framed.await();
      say("framing known %.1f s", (System.nanoTime() - start) / 1e9);
      firstPicture.await();
      say("first picture %.1f s", (System.nanoTime() - start) / 1e9);
      say("  of processor time, all threads together, %.1f s", (processorTime() - before) / 1e9);
      tellStalls("until then");
      partly.await();
      say("first deck laid out %.1f s", (System.nanoTime() - start) / 1e9);
      laidOut.await();
      say("all decks laid out %.1f s", (System.nanoTime() - start) / 1e9);
      whole.await();
      say("whole design %.1f s", (System.nanoTime() - start) / 1e9);
      TimeUnit.SECONDS.sleep(2);
      tellStalls("from then on");
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
    TimeUnit.SECONDS.sleep(Long.getLong("before", BEFORE_SECONDS));
    updates.set(0);
    allLaidOut.set(0);
    tellStalls("before the drag");
    long before = processorTime();
    TimeUnit.SECONDS.sleep(DRAG_SECONDS);
    say(
        "processor time for one update, all threads together, %.0f ms",
        (processorTime() - before) / 1e6 / Math.max(1, updates.get()));
    say(
        "pictures a second with the deck at hand laid out anew %.1f",
        updates.get() / (double) DRAG_SECONDS);
    say("layouts of all decks a second %.1f", allLaidOut.get() / (double) DRAG_SECONDS);
    tellStalls("while dragging");
  }

  private void tellStalls(String when) {
    say("longest stall " + when + " %.0f ms", stalls.longest());
    say("  of processor time %.0f ms", stalls.mostWork());
    stalls.told().forEach(System.out::println);
  }

  private static long processorTime() {
    return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
  }

  private static void say(String words, double number) {
    System.out.printf(Locale.ROOT, words + "%n", number);
  }
}
