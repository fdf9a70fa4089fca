package org.underlee.panel.model;

import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import org.underlee.picture.Image;

/**
 * Draws beside the screen's thread, one picture after the other. One that is asked for while
 * another is being drawn is drawn after it, and all those in between are left out.
 */
final class OneAtATime implements AutoCloseable {
  private final Executor screen;
  private final Newest drawing;
  private final Jobs jobs;
  private final BiConsumer<PictureJob, Image> drawn;
  private boolean busy;
  private boolean again;
  private boolean fineAgain;

  /** What is to be drawn when its turn has come. */
  interface Jobs {
    /** Empty while there is nothing to draw. */
    Optional<PictureJob> job(boolean fine);
  }

  OneAtATime(Executor screen, Jobs jobs, BiConsumer<PictureJob, Image> drawn) {
    this.screen = screen;
    this.jobs = jobs;
    this.drawn = drawn;
    drawing = new Newest("drawing", screen);
  }

  void draw(boolean fine) {
    if (busy) {
      again = true;
      fineAgain = fine;
      return;
    }
    jobs.job(fine)
        .ifPresent(
            job -> {
              busy = true;
              drawing.run(job::draw, image -> done(job, image), e -> busy = false);
            });
  }

  private void done(PictureJob job, Image image) {
    busy = false;
    drawn.accept(job, image);
    if (again) {
      again = false;
      boolean fine = fineAgain;
      screen.execute(() -> draw(fine));
    }
  }

  @Override
  public void close() {
    drawing.close();
  }
}
