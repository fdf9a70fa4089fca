package org.underlee.step;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/**
 * A Part 21 file (ISO 10303-21): its bytes and an index of its instances in primitive arrays. One
 * pass finds where each instance begins; values are decoded when asked for and not kept.
 *
 * <p>Read leniently where nothing is lost: a byte order mark, any line ends, comments anywhere,
 * several DATA sections, a missing trailer, {@code 1E5} without a point. Refused with an {@link
 * InputException} that says where: another kind of file, no DATA section or one without ENDSEC, a
 * file cut off in the middle, an instance number used twice or longer than 18 digits, lists nested
 * deeper than 128, strings longer than 1 MiB, numbers too large for a double, files of 2 GiB or
 * more. Immutable and safe to share between threads.
 */
public final class StepFile {
  private static final long MAX_BYTES = Integer.MAX_VALUE - 8L;

  private final StepSource source;
  private final StepIndex index;
  private final StepHeader header;
  private final long highestId;
  private final int blockOffset;

  private StepFile(StepSource source, StepScanner scan) {
    this.source = source;
    this.index = scan.index;
    this.header = StepHeader.of(scan.header);
    this.highestId = scan.highestId;
    this.blockOffset = scan.blockOffset;
  }

  /**
   * Reads and indexes a file.
   *
   * @throws UncheckedIOException when the file cannot be read
   * @throws InputException when it is not a usable Part 21 file
   */
  public static StepFile read(Path file) {
    String name = String.valueOf(file.getFileName());
    try {
      long size = Files.size(file);
      if (size > MAX_BYTES) {
        throw new InputException(
            Place.NOWHERE.inFile(name),
            name + " has " + size + " bytes; at most " + MAX_BYTES + " can be read",
            "Export the deck and what is near it as a model of its own.");
      }
      return of(Files.readAllBytes(file), name);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + file + ": " + e.getMessage(), e);
    }
  }

  /**
   * Indexes a file that is already in memory.
   *
   * @param bytes kept without a copy: do not change them afterwards
   */
  public static StepFile of(byte[] bytes, String name) {
    StepSource source = new StepSource(bytes, name);
    return new StepFile(source, new StepScanner(source).scan());
  }

  public String name() {
    return source.name;
  }

  /** The bytes themselves, not a copy: only for reading. */
  public byte[] bytes() {
    return source.bytes;
  }

  public StepHeader header() {
    return header;
  }

  /** First schema name in upper case, as {@code IFC2X3} or {@code IFC4X3_ADD2}; or empty. */
  public String schema() {
    return header.schemas().stream().findFirst().orElse("").toUpperCase(Locale.ROOT);
  }

  /** Number of instances; they are numbered from 0 in file order. */
  public int count() {
    return index.count();
  }

  public long id(int instance) {
    return index.id(instance);
  }

  /** In upper case; empty for a complex instance. */
  public String keyword(int instance) {
    return index.keyword(instance);
  }

  /** The index of the instance with this number, or −1. */
  public int find(long id) {
    return index.find(id);
  }

  /** From {@code #} through {@code ;}. */
  public ByteRange range(int instance) {
    StepCursor cursor = new StepCursor(source, index.offset(instance));
    int from = cursor.at;
    while (!cursor.at(';')) {
      if (cursor.at('\'') || cursor.at('"')) {
        cursor.skipQuoted((char) cursor.peek());
      } else if (cursor.at('/')) {
        cursor.skipSpace();
      } else {
        cursor.at++;
      }
    }
    return new ByteRange(from, cursor.at + 1);
  }

  public StepInstance decode(int instance) {
    return new StepParser(source, index.offset(instance)).instance(this);
  }

  /**
   * The instance with this number.
   *
   * @throws InputException when the file has no such instance
   */
  public StepInstance instance(long id) {
    int found = find(id);
    if (found < 0) {
      throw missing(id, Place.NOWHERE.inFile(name()), "the file has no instance #" + id);
    }
    return decode(found);
  }

  /** The same, where {@code needer} refers to it and is named in the error. */
  StepInstance instance(long id, StepInstance needer) {
    int found = find(id);
    if (found < 0) {
      String what = needer.keyword() + " refers to #" + id + ", which the file does not have";
      throw missing(id, needer.place(), needer.place() + ": " + what);
    }
    return decode(found);
  }

  private static InputException missing(long id, Place place, String message) {
    return new InputException(
        place,
        message,
        "Maybe the file was edited or cut: export it again so that #" + id + " is in it.");
  }

  /** Indices in file order. */
  public int[] ofKeyword(String upperCaseKeyword) {
    return index.ofKeyword(upperCaseKeyword);
  }

  /** Highest {@code #} number in the text outside strings and comments, references included. */
  public long highestId() {
    return highestId;
  }

  /** Where the ENDSEC of the last DATA section begins: new instances go in before it. */
  public int blockOffset() {
    return blockOffset;
  }

  /** Line and column of a byte, both from 1. */
  public Place place(int byteOffset) {
    return source.place(byteOffset);
  }
}
