package org.underlee.picture;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import org.underlee.geom.Box;
import org.underlee.geom.Mesh;
import org.underlee.geom.Vec3;

/**
 * All surfaces of a scene in flat arrays, ready to be drawn from any side. Places are relative to
 * the middle of the scene, so that a model far from the origin loses nothing.
 */
final class SurfaceModel {
  /** Ties in depth within this share of the scene's size go to the shape that comes first. */
  private static final double TIE_SHARE = 2e-6;

  final List<Shape> shapes;
  private final List<FeatureEdges> features;
  final Vec3 centre;
  final double tie;

  /** Three numbers a vertex. */
  final double[] xyz;

  /** Three vertex numbers a face, and the number of its shape. */
  final int[] corners;

  final int[] faceShape;

  /** Three numbers a face: unit length, outward where the shape is closed; zero without area. */
  final double[] normals;

  /** By shape: what picking answers. */
  final int[] shapeId;

  /** By shape: whether faces that look away are hidden by the rest of the same shape. */
  final boolean[] oneSided;

  /** Two vertex numbers and two face numbers an edge. */
  final int[] edgeEnds;

  final int[] edgeFaces;
  final boolean[] edgeCrease;
  final int[] edgeShape;

  private SurfaceModel(List<Shape> shapes, List<FeatureEdges> features, Box bounds) {
    this.shapes = shapes;
    this.features = features;
    this.centre = bounds.isEmpty() ? Vec3.ZERO : bounds.centre();
    this.tie = bounds.isEmpty() ? 0 : TIE_SHARE * bounds.size().length();
    int vertices = shapes.stream().mapToInt(s -> s.mesh().vertexCount()).sum();
    int faces = shapes.stream().mapToInt(s -> s.mesh().triangleCount()).sum();
    int edges = 0;
    for (int s = 0; s < shapes.size(); s++) {
      edges += shapes.get(s).edges() ? features.get(s).edges().size() : 0;
    }
    xyz = new double[3 * vertices];
    corners = new int[3 * faces];
    faceShape = new int[faces];
    normals = new double[3 * faces];
    shapeId = shapes.stream().mapToInt(Shape::id).toArray();
    oneSided = new boolean[shapes.size()];
    edgeEnds = new int[2 * edges];
    edgeFaces = new int[2 * edges];
    edgeCrease = new boolean[edges];
    edgeShape = new int[edges];
    fill();
  }

  static SurfaceModel of(Scene scene) {
    List<FeatureEdges> features =
        scene.shapes().stream().map(s -> FeatureEdges.of(s.mesh())).toList();
    return new SurfaceModel(scene.shapes(), features, scene.bounds());
  }

  /** As {@link #of(Scene)}; the edges of meshes that another model has too are taken from there. */
  static SurfaceModel of(Scene scene, SurfaceModel known) {
    IdentityHashMap<Mesh, FeatureEdges> found = new IdentityHashMap<>();
    for (int s = 0; s < known.shapes.size(); s++) {
      found.put(known.shapes.get(s).mesh(), known.features.get(s));
    }
    List<FeatureEdges> features =
        scene.shapes().stream()
            .map(Shape::mesh)
            .map(m -> Optional.ofNullable(found.get(m)).orElseGet(() -> FeatureEdges.of(m)))
            .toList();
    return new SurfaceModel(scene.shapes(), features, scene.bounds());
  }

  int vertexCount() {
    return xyz.length / 3;
  }

  int faceCount() {
    return faceShape.length;
  }

  int edgeCount() {
    return edgeShape.length;
  }

  private void fill() {
    int vertex = 0;
    int face = 0;
    int edge = 0;
    for (int s = 0; s < shapes.size(); s++) {
      Mesh mesh = shapes.get(s).mesh();
      oneSided[s] = features.get(s).closed();
      boolean inside = oneSided[s] && mesh.volume() < 0;
      fillVertices(mesh, vertex);
      fillFaces(mesh, s, vertex, face, inside ? -1 : 1);
      if (shapes.get(s).edges()) {
        edge = fillEdges(features.get(s).edges(), s, vertex, face, edge);
      }
      vertex += mesh.vertexCount();
      face += mesh.triangleCount();
    }
  }

  private void fillVertices(Mesh mesh, int start) {
    for (int i = 0; i < mesh.vertexCount(); i++) {
      put(xyz, start + i, mesh.vertex(i).minus(centre));
    }
  }

  private void fillFaces(Mesh mesh, int shape, int firstVertex, int start, int outward) {
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        corners[3 * (start + t) + k] = firstVertex + mesh.corner(t, k);
      }
      faceShape[start + t] = shape;
      Vec3 normal = mesh.areaNormal(t);
      double length = normal.length();
      put(normals, start + t, length > 0 ? normal.times(outward / length) : Vec3.ZERO);
    }
  }

  private int fillEdges(
      List<FeatureEdges.Edge> edges, int shape, int firstVertex, int firstFace, int start) {
    int at = start;
    for (FeatureEdges.Edge e : edges) {
      edgeEnds[2 * at] = firstVertex + e.from();
      edgeEnds[2 * at + 1] = firstVertex + e.to();
      edgeFaces[2 * at] = firstFace + e.faceA();
      edgeFaces[2 * at + 1] =
          e.faceB() == FeatureEdges.NO_FACE ? FeatureEdges.NO_FACE : firstFace + e.faceB();
      edgeCrease[at] = e.crease();
      edgeShape[at] = shape;
      at++;
    }
    return at;
  }

  private static void put(double[] numbers, int i, Vec3 p) {
    numbers[3 * i] = p.x();
    numbers[3 * i + 1] = p.y();
    numbers[3 * i + 2] = p.z();
  }
}
