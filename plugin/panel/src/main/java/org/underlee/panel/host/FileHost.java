package org.underlee.panel.host;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.writeback.SafeSave;

/**
 * A host that is nothing but a file: a window of our own. What is written in place leaves the file
 * as it was beside it; undoing gives it back.
 */
public final class FileHost implements Host {
  private static final String KEPT = ".before-underlee";

  private record Done(Path target, Optional<byte[]> before) {}

  private final Optional<Path> first;
  private final List<Consumer<Path>> opening = new ArrayList<>();
  private final Deque<Done> done = new ArrayDeque<>();
  private Optional<Path> open;

  public FileHost(Optional<Path> model) {
    first = model;
    open = model;
  }

  @Override
  public Optional<Path> openModel() {
    return first;
  }

  @Override
  public void onOpen(Consumer<Path> panel) {
    opening.add(panel);
  }

  /** Opens another model. */
  public void open(Path model) {
    open = Optional.of(model);
    opening.forEach(p -> p.accept(model));
  }

  /** Nothing is selected here but in the panel. */
  @Override
  public void onSelect(Consumer<Set<String>> panel) {}

  @Override
  public void select(Set<String> globalIds) {}

  @Override
  public void apply(Change change) {
    Path input = change.inPlace() ? change.target() : open.orElse(change.target());
    Optional<byte[]> before = bytesOf(change.target());
    if (change.inPlace()) {
      new SafeSave()
          .plain(
              input,
              change.target().resolveSibling(kept(change.target())),
              false,
              before.orElseThrow());
    }
    new SafeSave()
        .drained(
            input,
            change.target(),
            change.inPlace(),
            change.design().survey().model().step().bytes(),
            change.design().written().bytes());
    done.push(new Done(change.target(), before));
  }

  private static String kept(Path target) {
    return target.getFileName() + KEPT;
  }

  private static Optional<byte[]> bytesOf(Path file) {
    try {
      return Files.exists(file) ? Optional.of(Files.readAllBytes(file)) : Optional.empty();
    } catch (IOException e) {
      throw new InputException(
          Place.NOWHERE.inFile(file.toString()),
          "the file cannot be read to be kept: " + e.getMessage(),
          "Check the rights to the file.");
    }
  }

  @Override
  public boolean undo() {
    if (done.isEmpty()) {
      return false;
    }
    Done last = done.pop();
    try {
      if (last.before.isPresent()) {
        new SafeSave().plain(last.target, last.target, true, last.before.get());
      } else {
        Files.deleteIfExists(last.target);
      }
      return true;
    } catch (IOException e) {
      throw new InputException(
          Place.NOWHERE.inFile(last.target.toString()),
          "the file could not be taken back: " + e.getMessage(),
          "Check the rights to its folder.");
    }
  }

  @Override
  public void progress(String words, double share) {}

  @Override
  public void message(String words) {}
}
