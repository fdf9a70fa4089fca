package org.underlee.picture;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.underlee.picture.Labels.Label;

/** Which pixels of a picture show which of the things that are to be named, row by row. */
final class SeenPixels {
  private static final int[] NONE = {};

  private final Map<Integer, int[]> byId = new HashMap<>();

  private SeenPixels() {}

  static SeenPixels of(Image image, List<Label> labels) {
    int[] ids = image.ids();
    int[] ends = ends(ids);
    int[] pixels = new int[ids.length];
    int[] next = ends.clone();
    for (int i = ids.length - 1; i >= 0; i--) {
      pixels[--next[ids[i]]] = i;
    }
    SeenPixels seen = new SeenPixels();
    labels.stream()
        .flatMap(label -> label.ids().stream())
        .filter(id -> id < ends.length)
        .forEach(id -> seen.byId.put(id, Arrays.copyOfRange(pixels, next[id], ends[id])));
    return seen;
  }

  /** By id, how many pixels show it or one that comes before. */
  private static int[] ends(int[] ids) {
    int[] ends = new int[Arrays.stream(ids).max().orElse(0) + 1];
    for (int id : ids) {
      ends[id]++;
    }
    for (int id = 1; id < ends.length; id++) {
      ends[id] += ends[id - 1];
    }
    return ends;
  }

  /** Numbers of pixels from the upper left; empty when the thing is not seen. */
  int[] of(int id) {
    return byId.getOrDefault(id, NONE);
  }
}
