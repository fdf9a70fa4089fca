package org.underlee.panel.host;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.writeback.SafeSave;

/**
 * A host that is nothing but a file: a window of our own. What is written in place leaves the file
 * as it was beside it; undoing gives it back. A file that someone else has changed meanwhile is
 * left alone.
 */
public final class FileHost implements Host {
  private static final String KEPT = ".before-underlee";

  /**
   * A write that can be taken back.
   *
   * @param before what was there
   * @param after sum of what was written
   */
  private record Done(Path target, Optional<byte[]> before, String after) {}

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

  /** Opens another model: what was written of the one before can be taken back no more. */
  public void open(Path model) {
    open = Optional.of(model);
    done.clear();
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
    byte[] read = change.design().survey().model().step().bytes();
    byte[] written = change.design().written().bytes();
    if (change.inPlace() && !isOurs(change.target(), before.orElseThrow())) {
      requireAsRead(change.target(), before.orElseThrow(), read);
      keep(input, before.orElseThrow());
    }
    new SafeSave().drained(input, change.target(), change.inPlace(), read, written);
    done.push(new Done(change.target(), before, sum(written)));
  }

  /** Whether a file holds what was last written to it from here. */
  private boolean isOurs(Path target, byte[] now) {
    return done.stream()
        .filter(d -> d.target.equals(target))
        .findFirst()
        .filter(d -> d.after.equals(sum(now)))
        .isPresent();
  }

  private static void requireAsRead(Path target, byte[] now, byte[] read) {
    if (!Arrays.equals(now, read)) {
      throw new InputException(
          Place.NOWHERE.inFile(target.toString()),
          "the file is not as it was read, so it is not written over",
          "Open it again to design on what is in it now, or write to a copy.");
    }
  }

  /** Keeps a file as it is under the first name that is free: nothing kept is written over. */
  private static void keep(Path input, byte[] bytes) {
    Path kept = input.resolveSibling(input.getFileName() + KEPT);
    for (int n = 2; Files.exists(kept); n++) {
      if (bytesOf(kept).filter(b -> Arrays.equals(b, bytes)).isPresent()) {
        return;
      }
      kept = input.resolveSibling(input.getFileName() + KEPT + "-" + n);
    }
    new SafeSave().plain(input, kept, false, bytes);
  }

  private static String sum(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
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
    Done last = done.element();
    requireAsWritten(last);
    try {
      if (last.before.isPresent()) {
        new SafeSave().plain(last.target, last.target, true, last.before.get());
      } else {
        Files.deleteIfExists(last.target);
      }
      done.pop();
      return true;
    } catch (IOException e) {
      throw new InputException(
          Place.NOWHERE.inFile(last.target.toString()),
          "the file could not be taken back: " + e.getMessage(),
          "Check the rights to its folder.");
    }
  }

  private static void requireAsWritten(Done last) {
    if (bytesOf(last.target).filter(b -> sum(b).equals(last.after)).isEmpty()) {
      throw new InputException(
          Place.NOWHERE.inFile(last.target.toString()),
          "the file is not as it was written, so it is not taken back",
          "What it was before is in the file beside it where it was written in place.");
    }
  }

  @Override
  public void progress(String words, double share) {}

  @Override
  public void message(String words) {}
}
