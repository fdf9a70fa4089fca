package org.underlee.picture;

import java.util.List;
import java.util.stream.IntStream;
import org.underlee.geom.Box;
import org.underlee.geom.Vec3;

/** What is in a picture. */
public record Scene(List<Shape> shapes, List<Note> notes) {
  public Scene {
    shapes = List.copyOf(shapes);
    notes = List.copyOf(notes);
  }

  public static Scene of(List<Shape> shapes) {
    return new Scene(shapes, List.of());
  }

  public Scene withNotes(List<Note> more) {
    return new Scene(shapes, more);
  }

  /** Every vertex of every shape, for a camera to fit to. */
  public List<Vec3> points() {
    return shapes.stream()
        .map(Shape::mesh)
        .flatMap(m -> IntStream.range(0, m.vertexCount()).mapToObj(m::vertex))
        .toList();
  }

  /** The box around all shapes; empty when there are none. */
  public Box bounds() {
    return Box.around(shapes.stream().map(s -> s.mesh().bounds()).toList());
  }
}
