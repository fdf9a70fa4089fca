package org.underlee.takeoff;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/**
 * A table that a person wrote (RFC 4180, with a header; commas, or semicolons as some spreadsheets
 * write them). Every slip is told with its line and column.
 */
final class CsvTable {
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  /**
   * A cell.
   *
   * @param place where it begins: line and column from 1
   */
  record Cell(String text, Place place) {
    InputException wrong(String what, String advice) {
      return new InputException(place, what, advice);
    }
  }

  /** A row: its cells by the name of their column. Empty cells are not there. */
  record Row(Map<String, Cell> cells, Place place) {
    Optional<Cell> cell(String column) {
      return Optional.ofNullable(cells.get(column));
    }

    Cell required(String column) {
      return cell(column)
          .orElseThrow(
              () ->
                  new InputException(
                      place,
                      "the row has no " + column,
                      "Fill the column \"" + column + "\", or take the row out."));
    }
  }

  private final String text;
  private final String file;
  private int at;
  private int line = 1;
  private int lineBegins;
  private char separator = ',';

  private CsvTable(String text, String file) {
    this.text = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    this.file = file;
  }

  /**
   * The rows of a table.
   *
   * @param known names of columns
   * @throws InputException with line and column, when the table has another column, or a row has
   *     more cells than there are columns
   */
  static List<Row> read(String text, String file, List<String> known) {
    return new CsvTable(text, file).rows(known);
  }

  private List<Row> rows(List<String> known) {
    String first = text.lines().findFirst().orElse("");
    separator = first.indexOf(';') >= 0 && first.indexOf(',') < 0 ? ';' : ',';
    List<Cell> head = line();
    for (Cell cell : head) {
      if (!known.contains(name(cell))) {
        throw cell.wrong(
            "there is no column \"" + cell.text() + "\"",
            "Name the columns in the first line: " + String.join(", ", known) + ".");
      }
    }
    List<Row> rows = new ArrayList<>();
    while (at < text.length()) {
      Place place = place();
      List<Cell> cells = line();
      if (cells.stream().anyMatch(c -> !c.text().isBlank())) {
        rows.add(row(head, cells, place));
      }
    }
    return rows;
  }

  private static String name(Cell cell) {
    return cell.text().strip().toLowerCase(Locale.ROOT);
  }

  private static Row row(List<Cell> head, List<Cell> cells, Place place) {
    Map<String, Cell> named = new LinkedHashMap<>();
    for (int i = 0; i < cells.size(); i++) {
      Cell cell = cells.get(i);
      boolean blank = cell.text().isBlank();
      if (i >= head.size() && !blank) {
        throw cell.wrong(
            "the row has more cells than there are columns",
            "Put a text that has a comma in it in double quotes.");
      }
      if (!blank) {
        named.put(name(head.get(i)), new Cell(cell.text().strip(), cell.place()));
      }
    }
    return new Row(named, place);
  }

  private Place place() {
    return Place.text(line, at - lineBegins + 1).inFile(file);
  }

  private List<Cell> line() {
    List<Cell> cells = new ArrayList<>();
    boolean more = true;
    while (more) {
      Place place = place();
      cells.add(new Cell(cell(place), place));
      more = at < text.length() && text.charAt(at) == separator;
      at += more ? 1 : 0;
    }
    endLine();
    return cells;
  }

  private void endLine() {
    if (at < text.length() && text.charAt(at) == '\r') {
      at++;
    }
    if (at < text.length() && text.charAt(at) == '\n') {
      at++;
    }
    line++;
    lineBegins = at;
  }

  private String cell(Place place) {
    if (at < text.length() && text.charAt(at) == '"') {
      return quoted(place);
    }
    int from = at;
    while (at < text.length() && !isEnd(text.charAt(at))) {
      at++;
    }
    return text.substring(from, at);
  }

  private boolean isEnd(char c) {
    return c == separator || c == '\r' || c == '\n';
  }

  private String quoted(Place place) {
    StringBuilder cell = new StringBuilder();
    for (at++; at < text.length(); at++) {
      char c = text.charAt(at);
      if (c == '"' && at + 1 < text.length() && text.charAt(at + 1) == '"') {
        at++;
      } else if (c == '"') {
        at++;
        return cell.toString();
      }
      cell.append(c);
    }
    throw new Cell("", place)
        .wrong("the quote that begins here does not end", "Close it with a double quote.");
  }
}
