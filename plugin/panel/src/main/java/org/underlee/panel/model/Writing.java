package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.underlee.layout.Part;
import org.underlee.run.Design;

/**
 * What writing the design would do, before it is done.
 *
 * @param counts parts by kind
 * @param bytesBefore size of the designer's model; {@code bytesAfter} with the assembly
 */
public record Writing(
    Map<String, Integer> counts, int parts, int instances, long bytesBefore, long bytesAfter) {

  public static Writing of(Design design) {
    List<Part> parts = design.layout().parts();
    Map<String, Integer> counts =
        parts.stream()
            .collect(
                Collectors.toMap(p -> p.kind().spoken(), Part::count, Integer::sum, TreeMap::new));
    return new Writing(
        counts,
        parts.size(),
        design.written().instances(),
        design.survey().model().step().bytes().length,
        design.written().bytes().length);
  }

  public String words() {
    return parts + " parts in " + instances + " new instances";
  }

  /** {@code deck.drained.ifc} beside {@code deck.ifc}. */
  public static Path beside(Path model) {
    String name = model.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return model.resolveSibling((dot < 0 ? name : name.substring(0, dot)) + ".drained.ifc");
  }
}
