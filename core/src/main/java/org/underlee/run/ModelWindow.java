package org.underlee.run;

import java.nio.file.Path;
import java.util.Optional;

/** A window to work on a model in, offered by a program part with a screen where that is there. */
public interface ModelWindow {
  /** Opens the window and returns when it was closed. */
  void open(Optional<Path> model);
}
