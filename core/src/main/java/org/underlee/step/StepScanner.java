package org.underlee.step;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.LongSupplier;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.Rule;

/** Goes once through the text from its beginning: finds where each section and instance begins. */
final class StepScanner {
  private static final String MAGIC = "ISO-10303-21";
  private static final int MARK_LENGTH = 3;

  private final StepSource source;
  private final StepCursor cursor;
  private final StretchReader reader;
  private final int chunk;
  private final Noticed noticed = new Noticed();
  private final List<Finding> findings = new ArrayList<>();
  private long at;
  final StepIndex index;
  List<StepValue.Typed> header = List.of();
  long blockOffset = -1;

  StepScanner(StepSource source) {
    this(source, Stretches.CHUNK);
  }

  /** Reads ahead in chunks of so many bytes. */
  StepScanner(StepSource source, int chunk) {
    this.source = source;
    this.cursor = new StepCursor(source);
    this.reader = new StretchReader(cursor);
    this.chunk = chunk;
    this.index = new StepIndex(source);
  }

  StepScanner scan() {
    cursor.load(0, MARK_LENGTH);
    if (hasMark()) {
      at = MARK_LENGTH;
      note(StepRules.BYTE_ORDER_MARK, 0, "a byte order mark before the first letter", "None.");
    }
    whole(this::start);
    whole(this::headerSection);
    Stretches stretches = new Stretches(source, at, chunk);
    while (section(stretches)) {
      // each call reads one section
    }
    if (blockOffset < 0) {
      throw cursor.error(
          cursor.at,
          "the file has no DATA section",
          "Maybe it was cut off: get it again from its author.");
    }
    index.finish();
    noteStrings();
    return this;
  }

  long highestId() {
    return noticed.highestId;
  }

  List<Finding> findings() {
    return findings;
  }

  private boolean hasMark() {
    byte[] b = cursor.bytes;
    return cursor.limit >= MARK_LENGTH
        && b[0] == (byte) 0xEF
        && b[1] == (byte) 0xBB
        && b[2] == (byte) 0xBF;
  }

  private long whole(LongSupplier thing) {
    long result = reader.whole(at, thing);
    at = cursor.offset();
    return result;
  }

  private long start() {
    cursor.skipSpace();
    int start = cursor.at;
    if (!cursor.word().equals(MAGIC)) {
      throw notStep(start);
    }
    cursor.expect(';', "after " + MAGIC);
    cursor.skipSpace();
    if (!word("HEADER")) {
      throw cursor.expected("HEADER;");
    }
    cursor.expect(';', "after HEADER");
    return 0;
  }

  private InputException notStep(int start) {
    if (cursor.offset(start) >= source.bytes.size()) {
      return cursor.error(0, "the file is empty", "Choose an IFC file (*.ifc).");
    }
    String advice =
        cursor.bytes[start] == '<'
            ? "This looks like XML: export the model as an IFC file (*.ifc)."
            : "Choose an IFC file (*.ifc) in the text format of ISO 10303-21.";
    String found = source.snippet(cursor.offset(start));
    return cursor.error(
        start, "not an IFC text file: expected \"" + MAGIC + ";\", found " + found, advice);
  }

  /** Whether the given word stands here; steps over it if so. */
  private boolean word(String wanted) {
    int start = cursor.at;
    if (cursor.word().equals(wanted)) {
      return true;
    }
    cursor.at = start;
    return false;
  }

  private long headerSection() {
    List<StepValue.Typed> entities = new ArrayList<>();
    cursor.skipSpace();
    while (!word("ENDSEC")) {
      entities.add(new StepParser(cursor).headerEntity());
      cursor.skipSpace();
    }
    cursor.expect(';', "after ENDSEC");
    header = entities;
    return 0;
  }

  /** Reads one section; false at the end of the file. */
  private boolean section(Stretches stretches) {
    long begin = whole(this::space);
    if (whole(this::onlyPartOfTrailer) != 0) {
      String what = "the file ends without END-" + MAGIC + ";";
      note(StepRules.NO_TRAILER, begin, what, "Check that the file was copied whole.");
      return false;
    }
    String name = sectionName();
    switch (name) {
      case "END-" + MAGIC -> trailer();
      case "DATA" -> dataSection(begin, stretches);
      default -> {
        whole(this::skipSection);
        String what = "the section " + name + " is left out: IFC gives it no meaning";
        note(StepRules.SECTION_LEFT_OUT, begin, what, "Check that all of the model is here.");
      }
    }
    return !name.equals("END-" + MAGIC);
  }

  /** 1 where the rest of the file is nothing or the beginning of the trailer, else 0. */
  private long onlyPartOfTrailer() {
    int start = cursor.at;
    String rest = cursor.word();
    String trailer = "END-" + MAGIC;
    boolean part = cursor.atEnd() && trailer.startsWith(rest) && !rest.equals(trailer);
    cursor.at = start;
    return part ? 1 : 0;
  }

  private long space() {
    cursor.skipSpace();
    cursor.atEnd();
    return cursor.offset();
  }

  private String sectionName() {
    String[] name = new String[1];
    whole(
        () -> {
          int start = cursor.at;
          name[0] = cursor.word();
          if (!Set.of("END-" + MAGIC, "DATA", "ANCHOR", "REFERENCE", "SIGNATURE")
              .contains(name[0])) {
            cursor.at = start;
            throw cursor.expected("DATA; or END-" + MAGIC + ";");
          }
          return 0;
        });
    return name[0];
  }

  private void trailer() {
    long end = whole(this::space);
    if (cursor.at(';')) {
      at++;
      end = whole(this::space);
    }
    if (!cursor.atEnd()) {
      String what = "text after END-" + MAGIC + "; is left out: " + source.snippet(end);
      note(StepRules.AFTER_TRAILER, end, what, "Maybe two files were joined: check them.");
    }
  }

  private long skipParameters() {
    cursor.skipSpace();
    if (cursor.at('(')) {
      new InstanceReader(cursor, noticed).list();
    }
    cursor.expect(';', "after DATA");
    return 0;
  }

  /** Sections of edition 3 that IFC does not use. */
  private long skipSection() {
    while (!word("ENDSEC")) {
      if (cursor.atEnd()) {
        throw cursor.expected("ENDSEC;");
      }
      if (cursor.at('\'')) {
        cursor.skipString();
      } else {
        cursor.at++;
      }
      cursor.skipSpace();
    }
    cursor.expect(';', "after ENDSEC");
    return 0;
  }

  private void dataSection(long begin, Stretches stretches) {
    whole(this::skipParameters);
    whole(this::space);
    while (cursor.at('#')) {
      Stretch stretch =
          stretches.at(at).orElseGet(() -> reader.read(at, Math.max(at + 1, stretches.next())));
      index.add(stretch);
      noticed.addLater(stretch.noticed);
      at = stretch.stop;
      whole(this::space);
    }
    whole(() -> endOfData(begin));
  }

  private long endOfData(long begin) {
    long end = cursor.offset();
    if (!word("ENDSEC")) {
      long line = source.place(begin).line().orElse(0);
      throw cursor.expected("an instance (#…) or ENDSEC; in the DATA section of line " + line);
    }
    cursor.expect(';', "after ENDSEC");
    blockOffset = end;
    return 0;
  }

  private void noteStrings() {
    if (noticed.rawBytes >= 0) {
      String what = "texts hold bytes above 127; read as UTF-8 where valid, else as ISO 8859-1";
      note(StepRules.RAW_BYTES, noticed.rawBytes, what, "Check that letters look right.");
    }
    if (noticed.loneBackslash >= 0) {
      String what = "a backslash in a text begins no directive; read as a backslash";
      note(StepRules.LONE_BACKSLASH, noticed.loneBackslash, what, "Check that it looks right.");
    }
    Set<String> seen = new HashSet<>();
    header.stream()
        .map(StepValue.Typed::keyword)
        .filter(keyword -> !seen.add(keyword))
        .distinct()
        .forEach(
            keyword ->
                note(
                    StepRules.HEADER_TWICE,
                    0,
                    "the header has " + keyword + " twice; the first is used",
                    "Maybe two files were joined: check them."));
  }

  private void note(Rule rule, long offset, String message, String fix) {
    findings.add(Finding.of(rule, source.place(offset), message, fix));
  }
}
