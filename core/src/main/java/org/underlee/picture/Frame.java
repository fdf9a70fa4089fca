package org.underlee.picture;

/**
 * One view of a model, brought to the screen in steps, each shared by all threads: vertices to
 * their places, then which faces, then which edges are seen in which band of the picture, and then,
 * band by band, their drawing. Within a band all is drawn in the order of the scene, so the picture
 * does not depend on the number of threads.
 */
final class Frame {
  private final FrameView view;
  private final SurfaceModel model;
  private final FrameStore store;

  Frame(FrameView view) {
    this.view = view;
    model = view.model();
    store = view.store();
  }

  /** Finds what is seen where. */
  void prepare(Workers workers) {
    workers.run(FrameStore.chunks(model.shapes.size()), this::findColours);
    workers.run(FrameStore.chunks(model.vertexCount()), this::placeVertices);
    workers.runEach(store.faces.size(), () -> new FaceSorter(view)::sort);
    workers.runEach(store.lines.size(), () -> new EdgeSorter(view)::sort);
  }

  private void findColours(int chunk) {
    int end = Math.min(model.shapes.size(), (chunk + 1) * FrameStore.CHUNK);
    view.colours().find(chunk * FrameStore.CHUNK, end);
  }

  private void placeVertices(int chunk) {
    int end = Math.min(model.vertexCount(), (chunk + 1) * FrameStore.CHUNK);
    store.places.place(model.xyz, view.projection(), chunk * FrameStore.CHUNK, end);
  }
}
