package org.underlee.panel.view;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import javafx.animation.AnimationTimer;

/**
 * Does what would hold up the screen's thread if it were done at once: one portion for each picture
 * of the screen. What is begun anew takes the place of what is left.
 */
final class Portions {
  private final Deque<Runnable> left = new ArrayDeque<>();
  private final AnimationTimer pulse =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          next();
        }
      };

  /** Does the first of these now and the others later. */
  void begin(List<Runnable> portions) {
    left.clear();
    left.addAll(portions);
    next();
    if (!left.isEmpty()) {
      pulse.start();
    }
  }

  private void next() {
    Runnable portion = left.poll();
    if (portion != null) {
      portion.run();
    }
    if (left.isEmpty()) {
      pulse.stop();
    }
  }

  /** Does all that is left, for someone who needs it now. */
  void finish() {
    while (!left.isEmpty()) {
      next();
    }
  }
}
