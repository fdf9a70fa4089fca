package org.underlee.samples.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.underlee.samples.Xyz;

/**
 * Joists cut out for a hatch, or for stairs at the rim, between headers that hang on trimmers;
 * headers and trimmers single or doubled.
 */
final class Openings implements FramingCase {
  @Override
  public String name() {
    return "hatches and stairs openings, headers and trimmers";
  }

  @Override
  public Model make(Random random) {
    Yard yard = new Yard(random);
    boolean stairs = random.nextBoolean();
    int plies = 1 + random.nextInt(2);
    int headers = 1 + random.nextInt(2);
    int n = 6 + random.nextInt(4);
    int first = 1 + random.nextInt(n - 4); // the trimmer on the left
    int last = Math.min(n - 2, first + 2 + random.nextInt(2));
    double run = 3000 + random.nextInt(1200);
    double from = 900 + random.nextInt(500);
    double to = stairs ? run : from + 700 + random.nextInt(400);
    Plot plot = yard.plot("field", 0, 0, Xyz.Y);
    for (int i = 0; i < n; i++) {
      boolean trimmer = i == first || i == last;
      if (i <= first || i >= last) {
        plot.line(
            "j" + i, trimmer ? "trimmer" : "joist", trimmer ? plies : 1, i * yard.spacing, 0, run);
      } else {
        plot.line("high-" + i, "joist", 1, i * yard.spacing, 0, from);
      }
    }
    List<Truth.Bay> bays = new ArrayList<>();
    for (int i = 0; i + 1 < n; i++) {
      boolean cut = i >= first && i < last;
      bays.add(plot.bay(i, i + 1, Plot.at(0), Plot.at(cut ? from : run)));
    }
    double left = plot.faces.get(first)[1];
    double right = plot.faces.get(last)[0];
    header(plot, "high-header", headers, left, right, from);
    if (!stairs) {
      header(plot, "low-header", headers, left, right, to - headers * yard.w);
      bays = withTails(plot, bays, first, last, to, run);
    }
    for (int i : new int[] {first, last}) {
      plot.lines.stream()
          .filter(l -> l.members().get(0).startsWith("field/j" + i))
          .flatMap(l -> l.members().stream())
          .forEach(m -> plot.listsKey("trimmers", m));
    }
    double width = (n - 1) * yard.spacing + 2 * yard.w;
    rim(plot, run, width, stairs, first, last);
    plot.ledger(0, width).wall(-1500, width + 1500);
    plot.posts("post", run + yard.w / 2, 0, width, yard.bottom());
    return yard.model(new Truth.Deck(true, List.of(plot.field(bays))));
  }

  private static void header(
      Plot plot, String key, int plies, double left, double right, double v) {
    for (int p = 0; p < plies; p++) {
      double at = v + p * plot.yard.w;
      plot.support(key + "-" + p, "header", "headers", left, at, right, at + plot.yard.w);
    }
  }

  /** Joists from the low header to the rim; a line is placed by the middle of where it is. */
  private static List<Truth.Bay> withTails(
      Plot plot, List<Truth.Bay> bays, int first, int last, double from, double run) {
    List<Truth.Line> lines = new ArrayList<>();
    List<double[]> faces = new ArrayList<>();
    int[] place = new int[plot.lines.size()];
    int[] tail = new int[plot.lines.size()];
    List<Truth.Line> all = List.copyOf(plot.lines);
    List<double[]> allFaces = List.copyOf(plot.faces);
    for (int i = 0; i < all.size(); i++) {
      place[i] = lines.size();
      lines.add(all.get(i));
      faces.add(allFaces.get(i));
      if (i > first && i < last) {
        tail[i] = lines.size();
        plot.line("low-" + i, "joist", 1, allFaces.get(i)[0], from, run);
        lines.add(plot.lines.get(plot.lines.size() - 1));
        faces.add(allFaces.get(i));
      } else {
        tail[i] = place[i];
      }
    }
    plot.lines.clear();
    plot.lines.addAll(lines);
    plot.faces.clear();
    plot.faces.addAll(faces);
    List<Truth.Bay> moved = new ArrayList<>();
    bays.forEach(
        b ->
            moved.add(
                Truth.Bay.plain(
                    place[b.left()], place[b.right()], b.length(), b.widths().get(0)[1])));
    for (int i = first; i < last; i++) {
      moved.add(plot.bay(tail[i], tail[i + 1], Plot.at(from), Plot.at(run)));
    }
    return moved;
  }

  /** One rim, or the two pieces that the stairs leave. */
  private static void rim(
      Plot plot, double run, double width, boolean stairs, int first, int last) {
    if (stairs) {
      double left = plot.faces.get(first)[1];
      double right = plot.faces.get(last)[0];
      plot.support("rim-left", "rim", "rims", 0, run, left, run + plot.yard.w);
      plot.support("rim-right", "rim", "rims", right, run, width, run + plot.yard.w);
    } else {
      plot.rim(run, 0, width);
    }
  }
}
