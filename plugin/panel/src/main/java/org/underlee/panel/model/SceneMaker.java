package org.underlee.panel.model;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.underlee.geom.Box;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.picture.DeckPicture;
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
   * @param around what is drawn solid, in the frame; not needed for most pictures of a drag
   */
  record Whole(Result result, Prepared prepared, Transform frame, Once<Box> around) {

    Box box() {
      return around.get();
    }

    /** What a view is fitted to. */
    List<Vec3> subject() {
      return prepared.subject();
    }

    DeckPicture picture() {
      return prepared.picture();
    }

    private Made cut(Section section) {
      Renderer left =
          section.cutsNothing()
              ? prepared.renderer()
              : prepared.renderer().with(section.box(frame, box()).cut(picture().scene()));
      return new Made(this, section, left);
    }

    private Scene some(Set<Integer> ids) {
      return Scene.of(
          picture().scene().shapes().stream().filter(s -> ids.contains(s.id())).toList());
    }

    /** Points that hold some shapes; none when they are not in the picture. */
    List<Vec3> corners(Set<Integer> ids) {
      Scene some = some(ids);
      return some.shapes().isEmpty() ? List.of() : Prepared.corners(some.bounds()).toList();
    }

    /** A section box around some shapes; none when they are not in the picture. */
    Optional<Near> around(Set<Integer> ids) {
      Scene some = some(ids);
      return some.shapes().isEmpty()
          ? Optional.empty()
          : Optional.of(
              new Near(
                  Section.around(SectionBox.around(some, frame), box()),
                  Prepared.corners(some.bounds()).toList()));
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
    Prepared prepared = known == null ? Prepared.of(result) : known.prepared.next(result);
    Transform frame =
        result
            .survey()
            .framing()
            .fields()
            .findFirst()
            .map(f -> f.frame())
            .orElse(Transform.IDENTITY);
    Scene scene = prepared.picture().scene();
    return new Whole(
        result, prepared, frame, new Once<>(() -> SectionBox.around(solid(scene), frame)));
  }

  /** What the picture is of: a long wall that is seen through does not count. */
  private static Scene solid(Scene scene) {
    List<Shape> solid = scene.shapes().stream().filter(s -> s.paint().isSolid()).toList();
    return solid.isEmpty() ? scene : Scene.of(solid);
  }
}
