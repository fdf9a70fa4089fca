package org.underlee.panel.model;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.underlee.geom.Box;
import org.underlee.geom.Vec3;
import org.underlee.picture.DeckPicture;
import org.underlee.picture.DeckScene;
import org.underlee.picture.Renderer;
import org.underlee.picture.Scene;
import org.underlee.picture.Shape;
import org.underlee.run.Survey;

/**
 * A result ready to be drawn from any side. The next one takes from it what is the same.
 *
 * @param standing framing and surroundings of the survey
 * @param edition of the result
 */
record Prepared(
    Survey survey,
    DeckScene.Standing standing,
    PartMeshes meshes,
    DeckPicture picture,
    Renderer renderer,
    long edition) {

  static Prepared of(Result result) {
    return of(result, standing(result.survey()), PartMeshes.none(), Optional.empty());
  }

  @SuppressWarnings("ReferenceEquality") // another survey is another model, even an equal one
  Prepared next(Result result) {
    DeckScene.Standing there = survey == result.survey() ? standing : standing(result.survey());
    return of(result, there, meshes.next(), Optional.of(renderer));
  }

  private static DeckScene.Standing standing(Survey survey) {
    return DeckScene.standing(survey.framing(), survey.elements());
  }

  private static Prepared of(
      Result result, DeckScene.Standing standing, PartMeshes meshes, Optional<Renderer> known) {
    DeckPicture picture = standing.with(Optional.of(result.layout()), meshes::of);
    Renderer renderer =
        known.map(r -> r.with(picture.scene())).orElseGet(() -> Renderer.of(picture.scene()));
    return new Prepared(result.survey(), standing, meshes, picture, renderer, result.edition());
  }

  /** Places for a view to hold: of all that is drawn solid. */
  List<Vec3> subject() {
    Scene scene = picture.scene();
    List<Shape> solid = scene.shapes().stream().filter(s -> s.paint().isSolid()).toList();
    List<Shape> all = solid.isEmpty() ? scene.shapes() : solid;
    return all.stream().flatMap(s -> corners(s.mesh().bounds())).toList();
  }

  /** Enough to fit a view to, and few enough for the screen's thread. */
  static Stream<Vec3> corners(Box box) {
    return box.isEmpty()
        ? Stream.empty()
        : IntStream.range(0, 8)
            .mapToObj(
                k ->
                    new Vec3(
                        (k & 1) == 0 ? box.min().x() : box.max().x(),
                        (k & 2) == 0 ? box.min().y() : box.max().y(),
                        (k & 4) == 0 ? box.min().z() : box.max().z()));
  }
}
