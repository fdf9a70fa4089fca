package org.underlee.panel.model;

import java.util.IdentityHashMap;
import java.util.Optional;
import org.underlee.geom.Cuts;
import org.underlee.geom.Mesh;
import org.underlee.layout.Part;

/**
 * Meshes of the parts of one picture. Those that the next picture has too are taken from it, so
 * that while a hand drags only what it moves is made anew.
 */
final class PartMeshes {
  private final IdentityHashMap<Part, Mesh> known;
  private final IdentityHashMap<Part, Mesh> own = new IdentityHashMap<>();

  private final Cuts cuts;

  private PartMeshes(IdentityHashMap<Part, Mesh> known, Cuts cuts) {
    this.known = known;
    this.cuts = cuts;
  }

  static PartMeshes none() {
    return new PartMeshes(new IdentityHashMap<>(), Cuts.none());
  }

  /** For the picture after this one. */
  PartMeshes next() {
    return new PartMeshes(own, cuts.next());
  }

  Mesh of(Part part) {
    Mesh mesh = Optional.ofNullable(known.get(part)).orElseGet(() -> part.mesh(cuts));
    own.put(part, mesh);
    return mesh;
  }
}
