package org.underlee.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
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

  /** By shape, and after the last: the number of its first vertex, face and edge. */
  private final int[] firstVertex;

  private final int[] firstFace;
  private final int[] firstEdge;

  private SurfaceModel(List<Shape> shapes, List<FeatureEdges> features, Box bounds) {
    this.shapes = shapes;
    this.features = features;
    this.centre = bounds.isEmpty() ? Vec3.ZERO : bounds.centre();
    this.tie = bounds.isEmpty() ? 0 : TIE_SHARE * bounds.size().length();
    firstVertex = firsts(s -> shapes.get(s).mesh().vertexCount());
    firstFace = firsts(s -> shapes.get(s).mesh().triangleCount());
    firstEdge = firsts(s -> shapes.get(s).edges() ? features.get(s).count() : 0);
    int faces = firstFace[shapes.size()];
    int edges = firstEdge[shapes.size()];
    xyz = new double[3 * firstVertex[shapes.size()]];
    corners = new int[3 * faces];
    faceShape = new int[faces];
    normals = new double[3 * faces];
    shapeId = shapes.stream().mapToInt(Shape::id).toArray();
    oneSided = new boolean[shapes.size()];
    edgeEnds = new int[2 * edges];
    edgeFaces = new int[2 * edges];
    edgeCrease = new boolean[edges];
    edgeShape = new int[edges];
  }

  private int[] firsts(IntUnaryOperator count) {
    int[] firsts = new int[shapes.size() + 1];
    for (int s = 0; s < shapes.size(); s++) {
      firsts[s + 1] = firsts[s] + count.applyAsInt(s);
    }
    return firsts;
  }

  static SurfaceModel of(Scene scene) {
    Sides sides = new Sides();
    List<FeatureEdges> features =
        scene.shapes().stream().map(s -> FeatureEdges.of(s.mesh(), sides)).toList();
    SurfaceModel model = new SurfaceModel(scene.shapes(), features, scene.bounds());
    for (int s = 0; s < model.shapes.size(); s++) {
      model.fill(s);
    }
    return model;
  }

  /**
   * As {@link #of(Scene)}; what was worked out for meshes that another model has too is taken from
   * there, so that a picture that changes a little costs little.
   */
  static SurfaceModel of(Scene scene, SurfaceModel known) {
    IdentityHashMap<Mesh, Integer> places = new IdentityHashMap<>();
    for (int s = 0; s < known.shapes.size(); s++) {
      places.put(known.shapes.get(s).mesh(), s);
    }
    List<Optional<Integer>> same =
        scene.shapes().stream().map(s -> Optional.ofNullable(places.get(s.mesh()))).toList();
    List<FeatureEdges> features = new ArrayList<>();
    Sides sides = new Sides();
    for (int s = 0; s < same.size(); s++) {
      Mesh mesh = scene.shapes().get(s).mesh();
      features.add(
          same.get(s).map(known.features::get).orElseGet(() -> FeatureEdges.of(mesh, sides)));
    }
    SurfaceModel model = new SurfaceModel(scene.shapes(), features, scene.bounds());
    boolean sameCentre = model.centre.equals(known.centre);
    for (int s = 0; s < same.size(); s++) {
      boolean edges = model.shapes.get(s).edges();
      Optional<Integer> twin =
          same.get(s).filter(k -> sameCentre && known.shapes.get(k).edges() == edges);
      if (twin.isPresent()) {
        model.copy(s, known, twin.get());
      } else {
        model.fill(s);
      }
    }
    return model;
  }

  /** Takes what another model has of a mesh, under the numbers that it has here. */
  private void copy(int s, SurfaceModel from, int k) {
    int vertex = firstVertex[s] - from.firstVertex[k];
    int face = firstFace[s] - from.firstFace[k];
    int faces = firstFace[s + 1] - firstFace[s];
    int edges = firstEdge[s + 1] - firstEdge[s];
    oneSided[s] = from.oneSided[k];
    System.arraycopy(
        from.xyz,
        3 * from.firstVertex[k],
        xyz,
        3 * firstVertex[s],
        3 * (firstVertex[s + 1] - firstVertex[s]));
    System.arraycopy(from.normals, 3 * from.firstFace[k], normals, 3 * firstFace[s], 3 * faces);
    System.arraycopy(from.edgeCrease, from.firstEdge[k], edgeCrease, firstEdge[s], edges);
    Arrays.fill(faceShape, firstFace[s], firstFace[s + 1], s);
    Arrays.fill(edgeShape, firstEdge[s], firstEdge[s + 1], s);
    for (int i = 0; i < 3 * faces; i++) {
      corners[3 * firstFace[s] + i] = from.corners[3 * from.firstFace[k] + i] + vertex;
    }
    for (int i = 0; i < 2 * edges; i++) {
      edgeEnds[2 * firstEdge[s] + i] = from.edgeEnds[2 * from.firstEdge[k] + i] + vertex;
      int beside = from.edgeFaces[2 * from.firstEdge[k] + i];
      edgeFaces[2 * firstEdge[s] + i] =
          beside == FeatureEdges.NO_FACE ? FeatureEdges.NO_FACE : beside + face;
    }
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

  private void fill(int s) {
    Mesh mesh = shapes.get(s).mesh();
    oneSided[s] = features.get(s).closed();
    boolean inside = oneSided[s] && mesh.volume() < 0;
    fillVertices(mesh, firstVertex[s]);
    fillFaces(mesh, s, firstVertex[s], firstFace[s], inside ? -1 : 1);
    if (shapes.get(s).edges()) {
      fillEdges(features.get(s), s, firstVertex[s], firstFace[s], firstEdge[s]);
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

  private void fillEdges(FeatureEdges edges, int shape, int firstVertex, int firstFace, int start) {
    for (int i = 0; i < edges.count(); i++) {
      FeatureEdges.Edge e = edges.edge(i);
      int at = start + i;
      edgeEnds[2 * at] = firstVertex + e.from();
      edgeEnds[2 * at + 1] = firstVertex + e.to();
      edgeFaces[2 * at] = firstFace + e.faceA();
      edgeFaces[2 * at + 1] =
          e.faceB() == FeatureEdges.NO_FACE ? FeatureEdges.NO_FACE : firstFace + e.faceB();
      edgeCrease[at] = e.crease();
      edgeShape[at] = shape;
    }
  }

  private static void put(double[] numbers, int i, Vec3 p) {
    numbers[3 * i] = p.x();
    numbers[3 * i + 1] = p.y();
    numbers[3 * i + 2] = p.z();
  }
}
