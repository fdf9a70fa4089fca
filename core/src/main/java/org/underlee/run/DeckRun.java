package org.underlee.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.underlee.bay.BayFinder;
import org.underlee.bay.CrossingFinder;
import org.underlee.bay.FieldBays;
import org.underlee.framing.Framer;
import org.underlee.framing.Framing;
import org.underlee.ifc.IfcModel;
import org.underlee.step.StepFile;

/** The whole story: from a model file to what was recognised. */
public final class DeckRun {
  private DeckRun() {}

  public static Survey survey(Path file) {
    return survey(read(file), file.getFileName().toString());
  }

  public static Survey survey(byte[] given, String name) {
    IfcModel model = IfcModel.of(StepFile.of(given, name));
    Framing framing = Framer.frame(model);
    CrossingFinder crossings = new CrossingFinder(model.elements(), Framer.framingIds(framing));
    List<FieldBays> bays = framing.fields().map(f -> BayFinder.find(f, crossings)).toList();
    Source source =
        new Source(name, sha256(given), model.schema().name(), model.units().lengthName());
    return new Survey(source, model, framing, bays);
  }

  private static byte[] read(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
