package org.underlee.run.batch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/** The models in folders. */
final class ModelFiles {
  /**
   * One of them.
   *
   * @param label the folder's own name, then the path below it, with {@code /} between
   */
  record ModelFile(Path path, String label) {}

  private static final String COPY = ".drained.ifc";

  private ModelFiles() {}

  /**
   * All models at any depth, in the order of their labels. Hidden files and what lies in the output
   * folder are left aside; links to folders are not followed, so no cycle is entered.
   *
   * @throws InputException when a folder is not there, holds no model, or two models would have the
   *     same label
   */
  static List<ModelFile> in(List<Path> folders, List<Path> leftAside) {
    List<ModelFile> all = new ArrayList<>();
    for (Path folder : folders) {
      List<ModelFile> found = models(folder, leftAside);
      if (found.isEmpty()) {
        throw slip(folder, "there is no .ifc or .ifczip file in this folder", "Name another one.");
      }
      all.addAll(found);
    }
    all.sort(java.util.Comparator.comparing(ModelFile::label));
    requireDistinct(all);
    return all;
  }

  private static List<ModelFile> models(Path folder, List<Path> leftAside) {
    if (!Files.isDirectory(folder)) {
      throw slip(folder, "there is no such folder", "Name the folders that the models are in.");
    }
    Path root = folder.toAbsolutePath().normalize();
    List<Path> aside = leftAside.stream().map(p -> p.toAbsolutePath().normalize()).toList();
    try (Stream<Path> tree = Files.walk(root)) {
      return tree.filter(p -> isModel(root, p) && aside.stream().noneMatch(p::startsWith))
          .map(p -> new ModelFile(p, label(root, p)))
          .toList();
    } catch (IOException | UncheckedIOException e) {
      throw slip(folder, "the folder cannot be read: " + e.getMessage(), "Check the rights to it.");
    }
  }

  private static boolean isModel(Path root, Path file) {
    String name = lower(file);
    boolean hidden =
        Stream.of(root.relativize(file).toString().split("[/\\\\]"))
            .anyMatch(part -> part.startsWith("."));
    return !hidden
        && (name.endsWith(".ifc") || name.endsWith(".ifczip"))
        && Files.isRegularFile(file);
  }

  /**
   * Whether it is the copy that a design without a name of its own wrote beside the model.
   *
   * @param all models of the same folders
   */
  static boolean isCopy(ModelFile file, List<ModelFile> all) {
    String name = lower(file.path());
    if (!name.endsWith(COPY)) {
      return false;
    }
    String stem = name.substring(0, name.length() - COPY.length());
    return all.stream()
        .filter(f -> file.path().resolveSibling("").equals(f.path().resolveSibling("")))
        .map(f -> lower(f.path()))
        .anyMatch(n -> n.equals(stem + ".ifc") || n.equals(stem + ".ifczip"));
  }

  private static String lower(Path file) {
    return file.getFileName().toString().toLowerCase(Locale.ROOT);
  }

  private static String label(Path root, Path file) {
    Path name = root.getFileName();
    String below = root.relativize(file).toString().replace('\\', '/');
    return name == null ? below : name + "/" + below;
  }

  private static void requireDistinct(List<ModelFile> all) {
    Map<String, Path> seen = new HashMap<>();
    for (ModelFile one : all) {
      Path other = seen.put(one.label(), one.path());
      if (other != null) {
        throw slip(
            one.path(),
            "it would have the same name in the results as " + other + ": " + one.label(),
            "Name each folder once; run folders of the same name one at a time.");
      }
    }
  }

  private static InputException slip(Path where, String what, String advice) {
    return new InputException(Place.NOWHERE.inFile(where.toString()), what, advice);
  }
}
