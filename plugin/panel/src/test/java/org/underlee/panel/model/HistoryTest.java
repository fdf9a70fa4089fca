package org.underlee.panel.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HistoryTest {
  @Test
  void aDragIsOneStepWhateverItPasses() {
    History<Integer> history = new History<>(0);
    for (int i = 1; i < 50; i++) {
      history.drag("drag", i);
    }
    history.put("drag", 50);
    assertThat(history.now()).isEqualTo(50);
    assertThat(history.undo()).isZero();
    assertThat(history.toUndo()).isEmpty();
    assertThat(history.redo()).isEqualTo(50);
  }

  @Test
  void whatWasUndoneIsGoneOnceSomethingElseIsDone() {
    History<String> history = new History<>("a");
    history.put("b", "b");
    history.undo();
    assertThat(history.toRedo()).contains("b");
    history.put("c", "c");
    assertThat(history.toRedo()).isEmpty();
    assertThat(history.redo()).isEqualTo("c");
  }

  @Test
  void theSameAgainIsNoStep() {
    History<String> history = new History<>("a");
    history.put("a", "a");
    assertThat(history.toUndo()).isEmpty();
  }

  @Test
  void anyRowOfStepsAgreesWithAPlainListOfStates() {
    Random random = new Random(5);
    History<Integer> history = new History<>(0);
    List<Integer> states = new ArrayList<>(List.of(0));
    int at = 0;
    for (int i = 0; i < 2000; i++) {
      int what = random.nextInt(4);
      if (what == 0) {
        int next = random.nextInt(6);
        if (next != states.get(at)) {
          states = new ArrayList<>(states.subList(0, at + 1));
          states.add(next);
          at++;
        }
        history.put("put", next);
      } else if (what == 1) {
        at = Math.max(0, at - 1);
        history.undo();
      } else if (what == 2) {
        at = Math.min(states.size() - 1, at + 1);
        history.redo();
      } else {
        assertThat(history.takeBack()).isEqualTo(at > 0);
        states = at > 0 ? new ArrayList<>(states.subList(0, at)) : states;
        at = Math.max(0, at - 1);
      }
      assertThat(history.now()).as("step %s", i).isEqualTo(states.get(at));
    }
  }
}
