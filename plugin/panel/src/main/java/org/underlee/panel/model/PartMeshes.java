package org.underlee.panel.model;

import java.util.IdentityHashMap;
import java.util.Map;
import org.underlee.geom.Mesh;
import org.underlee.layout.Part;

/**
 * Meshes of the parts of one picture. Those that the next picture has too are taken from it, so
 * that while a hand drags only what it moves is made anew.
 */
final class PartMeshes {
  private final Map<Part, Mesh> known;
  private final Map<Part, Mesh> own = new IdentityHashMap<>();

  private PartMeshes(Map<Part, Mesh> known) {
    this.known = known;
  }

  static PartMeshes none() {
    return new PartMeshes(Map.of());
  }

  /** For the picture after this one. */
  PartMeshes next() {
    return new PartMeshes(own);
  }

  Mesh of(Part part) {
    Mesh mesh = known.isEmpty() ? null : known.get(part);
    Mesh mine = mesh == null ? part.mesh() : mesh;
    own.put(part, mine);
    return mine;
  }
}
