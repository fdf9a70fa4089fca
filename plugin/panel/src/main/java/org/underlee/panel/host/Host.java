package org.underlee.panel.host;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.underlee.run.Design;

/**
 * The program that the panel sits in: a window of our own on a file, or any other that has a model
 * open. All calls are made on the JavaFX thread, in both directions, but for {@link #apply} and
 * {@link #undo}, which write and take their time beside it.
 */
public interface Host {
  /** The model that is open when the panel starts. */
  Optional<Path> openModel();

  /** Tells the panel of each model that the host opens from now on. */
  void onOpen(Consumer<Path> panel);

  /** Tells the panel which elements or written parts the user selects in the host, by GlobalId. */
  void onSelect(Consumer<Set<String>> panel);

  /**
   * The user selected something in the panel.
   *
   * @param globalIds of elements of the model, and of parts as they are written into it; those of a
   *     bay, field or deck with it
   */
  void select(Set<String> globalIds);

  /**
   * Puts a drained model in the place of the open one, or beside it.
   *
   * @throws org.underlee.writeback.NotWrittenException when it could not; the model is as it was
   */
  void apply(Change change);

  /**
   * Takes the last applied change back; nothing happens where there is none.
   *
   * @return whether there was one
   */
  boolean undo();

  /**
   * What the panel is busy with.
   *
   * @param share of it that is done, below zero when that is not known; 1 at the end
   */
  void progress(String words, double share);

  void message(String words);

  /**
   * A drained model to be put in place.
   *
   * @param words for the host's list of changes: {@code 193 parts in 1204 instances}
   * @param inPlace whether it takes the open model's place
   */
  record Change(String words, Design design, Path target, boolean inPlace) {}
}
