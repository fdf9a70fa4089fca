package org.underlee.panel.model;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.picture.DeckLabels;
import org.underlee.picture.DeckPicture;
import org.underlee.picture.DeckScene;
import org.underlee.picture.Labels.Label;
import org.underlee.picture.Renderer;
import org.underlee.picture.Scene;
import org.underlee.picture.SectionBox;
import org.underlee.picture.Shape;

/** Prepares scenes to be drawn, and keeps the last one, of which the next is mostly the same. */
final class SceneMaker {
  private @Nullable Whole last;

  /**
   * A scene ready to be drawn.
   *
   * @param renderer of what the section box leaves
   * @param section what was cut away
   */
  record Made(Whole whole, Section section, Renderer renderer) {}

  /**
   * All of a result.
   *
   * @param frame of the first field
   * @param box around all of it, in the frame
   * @param subject what a view is fitted to
   */
  record Whole(
      Result result,
      DeckPicture picture,
      Renderer renderer,
      Transform frame,
      Box box,
      List<Vec3> subject,
      List<Label> labels) {

    private Made cut(Section section) {
      Renderer left =
          section.cutsNothing()
              ? renderer
              : renderer.with(section.box(frame, box).cut(picture.scene()));
      return new Made(this, section, left);
    }

    /** A section box around some shapes; none when they are not in the picture. */
    Optional<Near> around(Set<Integer> ids) {
      Scene some =
          Scene.of(picture.scene().shapes().stream().filter(s -> ids.contains(s.id())).toList());
      return some.shapes().isEmpty()
          ? Optional.empty()
          : Optional.of(
              new Near(Section.around(SectionBox.around(some, frame), box), boxCorners(some)));
    }
  }

  /**
   * A part of the picture.
   *
   * @param section around it
   * @param subject what a view is fitted to
   */
  record Near(Section section, List<Vec3> subject) {}

  /** The scene of a result within a section box. */
  synchronized Made make(Result result, Section section) {
    Whole known = last;
    Whole whole = known != null && known.result.showsSameAs(result) ? known : whole(result, known);
    last = whole;
    return whole.cut(section);
  }

  private static Whole whole(Result result, @Nullable Whole known) {
    DeckPicture picture =
        DeckScene.picture(
            result.survey().framing(), result.survey().elements(), Optional.of(result.layout()));
    Scene scene = picture.scene();
    Renderer renderer = known == null ? Renderer.of(scene) : known.renderer.with(scene);
    Transform frame =
        result.survey().framing().fields().findFirst().map(f -> f.frame()).orElse(Transform.IDENTITY);
    Scene subject = solid(scene);
    return new Whole(
        result,
        picture,
        renderer,
        frame,
        SectionBox.around(subject, frame),
        boxCorners(subject),
        DeckLabels.of(picture, result.layout()));
  }

  /** What the picture is of: a long wall that is seen through does not count. */
  private static Scene solid(Scene scene) {
    List<Shape> solid = scene.shapes().stream().filter(s -> s.paint().isSolid()).toList();
    return solid.isEmpty() ? scene : Scene.of(solid);
  }

  /** Enough to fit a view to, and few enough for the screen's thread. */
  private static List<Vec3> boxCorners(Scene scene) {
    return scene.shapes().stream().flatMap(s -> corners(s.mesh().bounds())).toList();
  }

  private static Stream<Vec3> corners(Box box) {
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
