package org.underlee.samples;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes a folder of decks, each other than the next, for measuring work on many models. */
public final class ManyModels {
  /** Folders as a firm has them: so many models in each. */
  private static final int IN_A_FOLDER = 50;

  private ManyModels() {}

  /**
   * The arguments are the folder and how many models.
   *
   * @throws IOException when a model cannot be written
   */
  public static void main(String[] args) throws IOException {
    if (args.length != 2) {
      throw new IllegalArgumentException("two arguments, folder and count; got " + args.length);
    }
    write(Path.of(args[0]), Integer.parseInt(args[1]));
  }

  /** Deck and way of writing it are drawn by the model's number; the same for the same number. */
  public static void write(Path folder, int models) throws IOException {
    for (int i = 0; i < models; i++) {
      Path job = folder.resolve("job-" + i / IN_A_FOLDER);
      Files.createDirectories(job);
      Files.write(
          job.resolve("deck-" + i + ".ifc"), IfcEmitter.emit(SampleDecks.random(i), Mix.random(i)));
    }
  }
}
