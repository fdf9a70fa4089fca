package org.underlee.panel.model;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.underlee.writeback.NotWrittenException;

/** A kind of file that the panel writes, known by the ending of its name. */
public enum FileKind {
  XLSX("Workbook", ".xlsx"),
  CSV("Table of comma-separated values", ".csv"),
  JSON("JSON", ".json"),
  MODEL("IFC model", ".ifc"),
  ISSUES("BCF issues", ".bcf"),
  ISSUES_ZIP("BCF issues", ".bcfzip"),
  TEXT("Text", ".txt");

  /** What a takeoff is written as. */
  public static final List<FileKind> TAKEOFFS = List.of(XLSX, CSV, JSON);

  public static final List<FileKind> MODELS = List.of(MODEL);
  public static final List<FileKind> BCF = List.of(ISSUES, ISSUES_ZIP);
  public static final List<FileKind> TEXTS = List.of(TEXT);

  private final String words;
  private final String ending;

  FileKind(String words, String ending) {
    this.words = words;
    this.ending = ending;
  }

  public String words() {
    return words;
  }

  /** {@code .csv}. */
  public String ending() {
    return ending;
  }

  private boolean isOf(Path file) {
    return String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT).endsWith(ending);
  }

  /**
   * Which of these a file is to be.
   *
   * @throws NotWrittenException when it is none, saying which there are
   */
  static FileKind of(Path file, List<FileKind> possible) {
    return possible.stream()
        .filter(k -> k.isOf(file))
        .findFirst()
        .orElseThrow(
            () ->
                new NotWrittenException(
                    file + " was not written: its ending does not say what it is to be",
                    "Name a file that ends in " + endings(possible) + "."));
  }

  private static String endings(List<FileKind> kinds) {
    return kinds.stream().map(FileKind::ending).collect(Collectors.joining(" or "));
  }
}
