package org.underlee.panel.model;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.underlee.layout.Part;
import org.underlee.run.Design;

/**
 * What writing the design would do, before it is done.
 *
 * @param counts parts by kind
 * @param bytesBefore size of the designer's model; {@code bytesAfter} with the assembly
 * @param zipped whether it came out of an archive, which nothing is written into
 */
public record Writing(
    Map<String, Integer> counts,
    int parts,
    int instances,
    long bytesBefore,
    long bytesAfter,
    boolean zipped) {

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
        design.written().bytes().length,
        design.survey().model().step().zipped());
  }

  public String words() {
    return parts + " parts in " + instances + " new instances";
  }

  /** The file that a text names; empty where it names none. */
  public static Optional<Path> target(String text) {
    try {
      return Optional.of(text.strip())
          .filter(t -> !t.isEmpty())
          .map(Path::of)
          .filter(t -> !Files.isDirectory(t));
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  /** What to know before a copy is written to where a text says; empty where there is nothing. */
  public static String caution(String text) {
    return target(text)
        .map(t -> Files.exists(t) ? "There is a file of this name: it will be written over." : "")
        .orElse("Name a file to write to.");
  }

  /** {@code deck.drained.ifc} beside {@code deck.ifc}. */
  public static Path beside(Path model) {
    String name = model.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return model.resolveSibling((dot < 0 ? name : name.substring(0, dot)) + ".drained.ifc");
  }
}
