package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class WhenWantedTest {
  private final List<Boolean> made = new ArrayList<>();
  private final WhenWanted drawing = new WhenWanted(made::add);

  @Test
  void whatIsLookedAtIsMadeAtOnce() {
    drawing.ask(true);
    drawing.ask(false);
    assertThat(made).containsExactly(true, false);
  }

  @Test
  void whatIsAskedForUnseenIsMadeOnceWhenSomeoneLooksAndStillFitted() {
    drawing.want(false);
    drawing.ask(true);
    drawing.ask(false);
    assertThat(made).isEmpty();
    drawing.want(true);
    assertThat(made).containsExactly(true);
  }

  @Test
  void lookingAtWhatHasNotChangedMakesNothing() {
    drawing.ask(false);
    drawing.want(false);
    drawing.want(true);
    assertThat(made).containsExactly(false);
  }
}
