package org.underlee.panel.model;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.underlee.geom.Vec3;
import org.underlee.layout.Layout;
import org.underlee.picture.Look;
import org.underlee.picture.RasterSettings;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.FieldByField;
import org.underlee.run.Survey;
import org.underlee.units.Lengths.UnitSystem;

/**
 * Goes once through all that opening a model needs, on a small deck of the program's own, while
 * nothing is open: what is done for the first time takes many times as long, and nobody waits then.
 */
final class Rehearsal {
  private static final String MODEL = "harbour-balcony.ifc";
  private static final RasterSettings SMALL = new RasterSettings(160, 100, 1, 1);

  private Rehearsal() {}

  /**
   * Does it.
   *
   * @return the lists of that deck, for the screen to rehearse with
   */
  static Lists run() throws IOException {
    Decisions by = Decisions.FIRST;
    Survey survey = DeckRun.survey(bytes(), MODEL);
    FieldByField fields = new FieldByField(survey);
    Opening opening = new Opening(fields, by.chosenKit(), Map.of());
    Result framed = opening.framed(by, 1);
    Layout layout =
        fields
            .layOut(
                new FieldByField.Wish(by.scope(), by.chosenKit(), by.storm()),
                Optional.empty(),
                AtHand.field(framed, Set.of(), Optional.of(Vec3.ZERO)),
                new LayoutSteps(() -> true, (soFar, words) -> {}))
            .orElseThrow();
    Result laidOut = new Result(by, survey, layout, 2, Optional.empty(), Progress.LAID_OUT);
    draw(Prepared.of(framed));
    draw(Prepared.of(framed).next(laidOut));
    Design design = DeckRun.design(survey, by.scope(), layout, by.storm());
    Result whole = laidOut.with(design);
    DrawingMaker.plan(whole, UnitSystem.METRIC, Set.of());
    // values are compared when they change: so are these, once
    if (framed.equals(laidOut)
        || by.equals(by.withRain(""))
        || Settings.FIRST.equals(Settings.FIRST.withFontPercent(1))) {
      throw new IllegalStateException("what differs is taken to be the same");
    }
    return Lists.of(whole, UnitSystem.METRIC);
  }

  private static void draw(Prepared prepared) {
    Orbit orbit = Orbit.around(new Vec3(-1, -1, -1), prepared.subject(), SMALL.aspect());
    prepared.renderer().draw(orbit.camera(), SMALL, Look.PLAIN);
  }

  private static byte[] bytes() throws IOException {
    try (InputStream in = Objects.requireNonNull(Rehearsal.class.getResourceAsStream(MODEL))) {
      return in.readAllBytes();
    }
  }
}
