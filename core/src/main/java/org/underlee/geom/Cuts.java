package org.underlee.geom;

import java.util.HashMap;
import java.util.Map;

/**
 * Remembers how outlines were cut into triangles: parts of one kind have the same section, and most
 * of a picture's sections are those of the picture before. For one thread at a time.
 */
public final class Cuts {
  private final Map<Outline, Triangulation> known;
  private final Map<Outline, Triangulation> own = new HashMap<>();

  private Cuts(Map<Outline, Triangulation> known) {
    this.known = known;
  }

  public static Cuts none() {
    return new Cuts(Map.of());
  }

  /** For what comes after: it knows what this one was asked for, and nothing older. */
  public Cuts next() {
    return new Cuts(own);
  }

  /** A plate is cut sooner than it is looked for. */
  Triangulation of(Outline outline) {
    return outline.holes().isEmpty() && outline.outer().size() == 4
        ? Triangulation.of(outline)
        : remembered(outline);
  }

  private Triangulation remembered(Outline outline) {
    return own.computeIfAbsent(
        outline,
        o -> {
          Triangulation before = known.get(o);
          return before == null ? Triangulation.of(o) : before;
        });
  }
}
