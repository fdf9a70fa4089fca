package org.underlee.picture;

import java.util.List;
import org.underlee.geom.Box;

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

  /** The box around all shapes; empty when there are none. */
  public Box bounds() {
    return Box.around(shapes.stream().map(s -> s.mesh().bounds()).toList());
  }
}
