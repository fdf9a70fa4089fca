package org.underlee.clash;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.underlee.geom.Mesh;

/**
 * Takes a mesh apart into the bodies that it is made of: triangles that share vertices. Where such
 * a piece is not closed the surface was written face by face, and the whole is one body.
 */
final class Pieces {
  private final int[] leader;

  private Pieces(int vertices) {
    leader = new int[vertices];
    for (int v = 0; v < vertices; v++) {
      leader[v] = v;
    }
  }

  static List<Solid> of(Mesh mesh) {
    if (mesh.isEmpty()) {
      return List.of();
    }
    List<Solid> pieces = split(mesh).stream().map(Solid::of).toList();
    boolean whole = pieces.size() == 1 || !pieces.stream().allMatch(Solid::isClosed);
    return whole ? List.of(Solid.of(mesh)) : pieces;
  }

  private static List<Mesh> split(Mesh mesh) {
    Pieces sets = new Pieces(mesh.vertexCount());
    for (int t = 0; t < mesh.triangleCount(); t++) {
      sets.join(mesh.corner(t, 0), mesh.corner(t, 1));
      sets.join(mesh.corner(t, 0), mesh.corner(t, 2));
    }
    Map<Integer, List<Integer>> triangles = new LinkedHashMap<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      triangles.computeIfAbsent(sets.find(mesh.corner(t, 0)), k -> new ArrayList<>()).add(t);
    }
    return triangles.size() == 1
        ? List.of(mesh)
        : triangles.values().stream().map(all -> part(mesh, all)).toList();
  }

  private static Mesh part(Mesh mesh, List<Integer> triangles) {
    Map<Integer, Integer> numbers = new LinkedHashMap<>();
    int[] corners = new int[3 * triangles.size()];
    for (int i = 0; i < corners.length; i++) {
      int vertex = mesh.corner(triangles.get(i / 3), i % 3);
      numbers.putIfAbsent(vertex, numbers.size());
      corners[i] = numbers.getOrDefault(vertex, 0);
    }
    double[] xyz = new double[3 * numbers.size()];
    numbers.forEach(
        (vertex, at) -> {
          xyz[3 * at] = mesh.vertex(vertex).x();
          xyz[3 * at + 1] = mesh.vertex(vertex).y();
          xyz[3 * at + 2] = mesh.vertex(vertex).z();
        });
    return new Mesh(xyz, corners);
  }

  private int find(int v) {
    int at = v;
    while (leader[at] != at) {
      leader[at] = leader[leader[at]];
      at = leader[at];
    }
    return at;
  }

  private void join(int a, int b) {
    leader[find(a)] = find(b);
  }
}
