package org.underlee.picture;

import java.util.List;
import java.util.function.Supplier;

/** Draws a frame's bands on one thread: solid parts, then, seen through, the faded ones. */
final class BandContent {
  private final FrameStore store;
  private final FacePainter faces;
  private final EdgePainter lines;
  private final EdgePainter fadedLines;

  BandContent(FrameView view) {
    store = view.store();
    faces = new FacePainter(view);
    lines = new EdgePainter(view, true);
    fadedLines = new EdgePainter(view, false);
  }

  /**
   * Draws a band.
   *
   * @param layer full of background
   * @param more gives empty layers for the same rows
   */
  void draw(int band, Layer layer, Supplier<Layer> more) {
    store.faces.forEach(f -> faces.paint(f, band, layer));
    store.lines.forEach(l -> lines.paint(l, band, layer));
    if (meets(store.fadedFaces, band) || meets(store.fadedLines, band)) {
      Layer faded = more.get();
      store.fadedFaces.forEach(f -> faces.paint(f, band, faded));
      store.fadedLines.forEach(l -> fadedLines.paint(l, band, faded));
      layer.lay(faded);
    }
  }

  private static boolean meets(List<BandLists> lists, int band) {
    return lists.stream().anyMatch(l -> l.from(band) < l.from(band + 1));
  }
}
