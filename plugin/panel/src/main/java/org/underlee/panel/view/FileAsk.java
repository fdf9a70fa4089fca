package org.underlee.panel.view;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.stage.FileChooser;
import javafx.stage.Window;

/** Asks the user for a file, in the way of the system. */
public interface FileAsk {
  Optional<Path> toOpen(String words, List<String> endings);

  Optional<Path> toSave(String words, Path proposed);

  /** The system's own dialogs, over a window. */
  static FileAsk over(Window window) {
    return new FileAsk() {
      @Override
      public Optional<Path> toOpen(String words, List<String> endings) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(words);
        chooser
            .getExtensionFilters()
            .add(
                new FileChooser.ExtensionFilter(
                    words, endings.stream().map(e -> "*" + e).toList()));
        return Optional.ofNullable(chooser.showOpenDialog(window)).map(File::toPath);
      }

      @Override
      public Optional<Path> toSave(String words, Path proposed) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(words);
        chooser.setInitialFileName(proposed.getFileName().toString());
        Optional.ofNullable(proposed.toAbsolutePath().getParent())
            .map(Path::toFile)
            .filter(File::isDirectory)
            .ifPresent(chooser::setInitialDirectory);
        return Optional.ofNullable(chooser.showSaveDialog(window)).map(File::toPath);
      }
    };
  }
}
