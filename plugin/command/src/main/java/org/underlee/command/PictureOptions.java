package org.underlee.command;

import java.nio.file.Path;
import java.util.Optional;
import org.underlee.layout.Layout;
import org.underlee.run.Survey;
import picocli.CommandLine.Option;

/** What the verbs that can draw a deck understand. */
final class PictureOptions {
  @Option(
      names = "--picture",
      paramLabel = "FILE",
      description = "Draw the deck: .png in 3-D, .svg in plan.")
  Optional<Path> file = Optional.empty();

  @Option(
      names = "--view",
      paramLabel = "FROM",
      description = "Take the 3-D picture from below or above; below when not given.")
  Output.View view = Output.View.BELOW;

  /** Refuses a picture of no known kind, before any work is done. */
  void requireKnown(ModelOptions model) {
    file.ifPresent(f -> Output.requireKnownPicture(model, f));
  }

  void draw(ModelOptions model, Survey survey, Optional<Layout> layout) {
    file.ifPresent(f -> Output.picture(model, f, view, survey, layout));
  }
}
