package org.underlee.panel.view;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import javafx.stage.Window;
import org.underlee.panel.model.FileKind;

/** Asks the user for a file, in the way of the system. */
public interface FileAsk {
  Optional<Path> toOpen(String words, List<String> endings);

  /**
   * A file to write.
   *
   * @param kinds that it may be, that of the proposed name first
   */
  Optional<Path> toSave(String words, Path proposed, List<FileKind> kinds);

  /** A folder to write into. */
  Optional<Path> toFill(String words, Path near);

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
      public Optional<Path> toSave(String words, Path proposed, List<FileKind> kinds) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(words);
        chooser.setInitialFileName(proposed.getFileName().toString());
        for (FileKind kind : kinds) {
          String shown = kind.words() + " (" + kind.ending() + ")";
          chooser
              .getExtensionFilters()
              .add(new FileChooser.ExtensionFilter(shown, "*" + kind.ending()));
        }
        folder(proposed).ifPresent(chooser::setInitialDirectory);
        return Optional.ofNullable(chooser.showSaveDialog(window)).map(File::toPath);
      }

      @Override
      public Optional<Path> toFill(String words, Path near) {
        DirectoryChooser chooser = new DirectoryChooser();
        chooser.setTitle(words);
        folder(near).ifPresent(chooser::setInitialDirectory);
        return Optional.ofNullable(chooser.showDialog(window)).map(File::toPath);
      }

      private Optional<File> folder(Path near) {
        return Optional.ofNullable(near.toAbsolutePath().getParent())
            .map(Path::toFile)
            .filter(File::isDirectory);
      }
    };
  }
}
