package org.underlee.picture;

import java.util.List;
import java.util.stream.IntStream;

/**
 * The arrays that one picture of a model is worked out in. The next picture uses them again: fresh
 * ones would have to be cleared by the machine each time.
 */
final class FrameStore {
  /** What a thread takes on at once. */
  static final int CHUNK = 4096;

  private final int vertexChunks;
  final ScreenPlaces places;

  /** By face: the cosine of its angle to the viewer; above zero when it is seen from outside. */
  final float[] facing;

  final List<BandLists> faces;
  final List<BandLists> fadedFaces;
  final List<BandLists> lines;
  final List<BandLists> fadedLines;

  FrameStore(SurfaceModel model) {
    vertexChunks = chunks(model.vertexCount());
    places = new ScreenPlaces(vertexChunks * CHUNK);
    facing = new float[chunks(model.faceCount()) * CHUNK];
    faces = lists(model.faceCount());
    fadedFaces = lists(model.faceCount());
    lines = lists(model.edgeCount());
    fadedLines = lists(model.edgeCount());
  }

  /** Whether a picture of another model can be worked out in it: one that is about as large. */
  boolean fits(SurfaceModel model) {
    return vertexChunks == chunks(model.vertexCount())
        && faces.size() == chunks(model.faceCount())
        && lines.size() == chunks(model.edgeCount());
  }

  /** How many chunks there are of so many. */
  static int chunks(int count) {
    return (count + CHUNK - 1) / CHUNK;
  }

  private static List<BandLists> lists(int count) {
    return IntStream.range(0, chunks(count)).mapToObj(i -> new BandLists()).toList();
  }
}
