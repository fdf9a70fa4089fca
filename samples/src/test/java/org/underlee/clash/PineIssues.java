package org.underlee.clash;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.underlee.kit.KitReader;
import org.underlee.layout.Scope;
import org.underlee.run.Checked;
import org.underlee.run.Coordination;
import org.underlee.run.DeckRun;
import org.underlee.run.SurveyRequest;

/** The pine deck, drained without a look at its services, and checked with them. */
public final class PineIssues {
  static final Path SAMPLE =
      Path.of(System.getProperty("underlee.root", ".."), "samples", "pine-deck");

  /** As drawn by the generator. */
  public static final Path SERVICES = SAMPLE.resolve("services.ifc");

  private PineIssues() {}

  /** Writes the drained model into a folder. */
  public static Path drained(Path folder) throws IOException {
    Path model = SAMPLE.resolve("pine-deck.ifc");
    Path out = folder.resolve("pine-deck.drained.ifc");
    Files.write(
        out,
        DeckRun.design(DeckRun.survey(model), Scope.OUTSIDE, KitReader.builtIn())
            .written()
            .bytes());
    return out;
  }

  public static Coordination of(Path drained, IssueRegister before, Path... services) {
    SurveyRequest request =
        new SurveyRequest(Optional.empty(), Optional.empty(), List.of(services));
    Checked checked = DeckRun.check(drained, request, Optional.empty());
    return DeckRun.coordinate(drained, checked, KitReader.builtIn(), before);
  }
}
