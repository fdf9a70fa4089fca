package org.underlee.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.underlee.drainage.flow.RainData;
import org.underlee.drainage.flow.Storm;
import org.underlee.kit.DrainValue;
import org.underlee.kit.Kit;
import org.underlee.kit.KitReader;
import org.underlee.layout.FieldLayout;
import org.underlee.layout.Layout;
import org.underlee.layout.Scope;

/** Field by field, in any order, the layout is that of all at once. */
class FieldByFieldTest {
  private static final Path SAMPLE =
      Path.of(
          System.getProperty("underlee.root", "."),
          "samples/hillside-terrace/hillside-terrace.ifc");
  private static final Kit KIT = KitReader.builtIn();
  private static final Storm STORM = RainData.builtIn().service(RainData.ANYWHERE);
  private static Survey survey;

  /** Notes what it is shown, and wants no more after a number of times. */
  private static final class Notes implements FieldByField.Watcher {
    private final List<Layout> seen = new ArrayList<>();
    private final int enough;

    Notes(int enough) {
      this.enough = enough;
    }

    @Override
    public boolean goesOn() {
      return seen.size() < enough;
    }

    @Override
    public void sees(Layout layout, int done, int all) {
      assertThat(done).isLessThan(all);
      seen.add(layout);
    }
  }

  @BeforeAll
  static void read() {
    survey = DeckRun.survey(SAMPLE);
  }

  private static FieldByField.Wish wish(double run) {
    Kit kit = KIT.with(DrainValue.RUN_PER_FALL, run, "a test");
    return new FieldByField.Wish(Scope.OUTSIDE, kit, STORM);
  }

  private static Layout atOnce(double run) {
    FieldByField.Wish wish = wish(run);
    return DeckRun.layOut(survey, wish.scope(), wish.kit(), wish.storm());
  }

  @Test
  void whicheverFieldIsAtHandTheEndIsThatOfAllAtOnce() {
    FieldByField fields = new FieldByField(survey);
    Layout all = atOnce(80);
    assertThat(all.fields()).hasSizeGreaterThan(1);
    for (FieldLayout atHand : all.fields()) {
      Notes notes = new Notes(Integer.MAX_VALUE);
      assertThat(fields.layOut(wish(80), Optional.empty(), Optional.of(atHand.field()), notes))
          .contains(all);
      assertThat(notes.seen.get(0).fields())
          .containsExactlyElementsOf(
              all.fields().stream().filter(f -> f.deck().equals(atHand.deck())).toList());
    }
  }

  @Test
  void whatIsNotLaidOutYetIsAsItWasBefore() {
    FieldByField fields = new FieldByField(survey);
    Layout before = atOnce(80);
    Layout after = atOnce(100);
    FieldLayout atHand = after.fields().get(after.fields().size() - 1);
    Notes notes = new Notes(1);
    assertThat(fields.layOut(wish(100), Optional.of(before), Optional.of(atHand.field()), notes))
        .isEmpty();
    Layout mixed = notes.seen.get(0);
    assertThat(mixed.fields()).hasSameSizeAs(before.fields());
    for (int i = 0; i < mixed.fields().size(); i++) {
      boolean isNew = mixed.fields().get(i).deck().equals(atHand.deck());
      assertThat(mixed.fields().get(i)).isEqualTo((isNew ? after : before).fields().get(i));
    }
  }

  @Test
  void whatIsNoLongerWantedIsNotBegun() {
    Notes none = new Notes(0);
    assertThat(new FieldByField(survey).layOut(wish(80), Optional.empty(), Optional.empty(), none))
        .isEmpty();
    assertThat(none.seen).isEmpty();
  }
}
