package org.underlee.samples;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** Writes the committed files of every sample: the model and what a survey of it should say. */
public final class WriteSamples {
  private WriteSamples() {}

  /** The one argument is the folder of the samples. */
  public static void main(String[] args) throws IOException {
    if (args.length != 1) {
      throw new IllegalArgumentException("one argument, the samples folder; got " + args.length);
    }
    Path root = Path.of(args[0]);
    for (SampleDeck sample : SampleDecks.all()) {
      write(sample, root.resolve(sample.name()));
    }
    for (HardCase hard : HardCases.all()) {
      write(hard.deck(), root.resolve(HardCase.FOLDER).resolve(hard.deck().name()));
    }
  }

  private static void write(SampleDeck sample, Path folder) throws IOException {
    for (Map.Entry<String, byte[]> file : files(sample).entrySet()) {
      Path path = folder.resolve(file.getKey());
      Files.createDirectories(path.resolveSibling("."));
      Files.write(path, file.getValue());
    }
  }

  /** The files of {@code sample} by their path in its folder. */
  static Map<String, byte[]> files(SampleDeck sample) {
    Mix mix = sample.ownMix();
    String truth = TruthJson.of(sample.truth(mix), sample, mix);
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(sample.name() + ".ifc", IfcEmitter.emit(sample, mix));
    if (sample.name().equals("pine-deck")) {
      files.put("services.ifc", PineServices.text().getBytes(StandardCharsets.UTF_8));
    }
    files.put("expected/survey.json", truth.getBytes(StandardCharsets.UTF_8));
    return files;
  }
}
