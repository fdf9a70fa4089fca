package org.underlee.step;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.underlee.finding.InputException;
import org.underlee.ifc.IfcModel;

/** Models cut off: nothing but a missing trailer may pass, and each refusal has its advice. */
final class Cuts {
  /** The larger a model, the more places it has and the longer each takes. */
  static final long LARGEST = 64 << 10;

  private static final int EVERY_PLACE = 1;

  private Cuts() {}

  /** The sound models up to {@link #LARGEST} in a folder and below. */
  static List<Path> models(Path folder) throws IOException {
    List<Path> models = new ArrayList<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.filter(p -> p.toString().endsWith(".ifc")).sorted().toList()) {
        if (Files.size(path) <= LARGEST && isRead(path)) {
          models.add(path);
        }
      }
    }
    return models;
  }

  private static boolean isRead(Path path) throws IOException {
    try {
      StepFile file = StepFile.of(Files.readAllBytes(path), "whole.ifc");
      return file.findings().isEmpty() && file.count() > 0;
    } catch (InputException e) {
      return false;
    }
  }

  /**
   * How many of the lengths, each so many bytes apart, are read; the others are refused.
   *
   * @throws AssertionError where a cut is neither read rightly nor refused with place and advice
   */
  static int read(Path path, int step) throws IOException {
    byte[] model = Files.readAllBytes(path);
    String text = new String(model, StandardCharsets.ISO_8859_1);
    // A signature may follow the model, with an end of its own.
    int trailer = text.indexOf("END-ISO-10303-21");
    int complete = text.lastIndexOf("ENDSEC", trailer < 0 ? text.length() : trailer) + 7;
    int read = 0;
    for (int end = 0; end < model.length; end += step) {
      try {
        IfcModel.of(StepFile.of(Arrays.copyOf(model, end), "cut.ifc")).elements();
        require(end >= complete, path, end, "is read though its data are not whole");
        read++;
      } catch (InputException e) {
        require(!e.advice().isBlank(), path, end, "is refused without advice");
        require(e.place().file().isPresent(), path, end, "is refused without a place");
      } catch (RuntimeException | StackOverflowError e) {
        throw new AssertionError(path + " cut at " + end + ": " + e, e);
      }
    }
    return read;
  }

  private static void require(boolean holds, Path path, int end, String what) {
    if (!holds) {
      throw new AssertionError(path + " cut at " + end + " " + what);
    }
  }

  /** Cuts the models of folders at every place. */
  public static void main(String[] folders) throws IOException {
    long places = 0;
    long read = 0;
    int models = 0;
    for (String folder : folders) {
      for (Path model : models(Path.of(folder))) {
        places += Files.size(model);
        read += read(model, EVERY_PLACE);
        models++;
        if (models % 50 == 0) {
          System.out.println(models + " models, " + places + " places so far");
        }
      }
    }
    System.out.printf(
        "%d models, %d places, %d read, %d refused%n", models, places, read, places - read);
  }
}
