package org.underlee.step;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/**
 * A Part 21 file (ISO 10303-21): its bytes and an index of its instances in primitive arrays. One
 * pass, on all processors, finds where each instance begins; values are decoded when asked for and
 * not kept. A large file stays on the disk, mapped into memory, and must not change while in use.
 *
 * <p>Read leniently where the meaning is clear, with a note in {@link #findings()}: a byte order
 * mark, a missing trailer, text after the trailer, raw bytes above 127, lone backslashes, sections
 * that IFC does not use. Any line ends, comments anywhere, several DATA sections and {@code 1E5}
 * without a point need no note. Refused with an {@link InputException} that says where: another
 * kind of file, no DATA section or one without ENDSEC, a file cut off in the middle, an instance
 * number used twice or longer than 18 digits, numbers too large for a double, and what exceeds the
 * {@link StepLimits}. Immutable and safe to share between threads.
 */
public final class StepFile {
  /** Smaller files are read into memory, where no other program can change them. */
  private static final int MAPPED_FROM = 16 << 20;

  private static final int MOST_IN_ARRAY = Integer.MAX_VALUE - 8;

  private final StepSource source;
  private final StepIndex index;
  private final StepHeader header;
  private final List<Finding> findings;
  private final long highestId;
  private final long endOfData;

  /** Of the archive that the model came out of; empty when it came out of none. */
  private final Optional<String> archiveSha256;

  private StepFile(StepSource source, StepScanner scan, Optional<String> archiveSha256) {
    this.source = source;
    this.index = scan.index;
    this.header = StepHeader.of(scan.header);
    this.findings = List.copyOf(scan.findings());
    this.highestId = scan.highestId();
    this.endOfData = scan.blockOffset;
    this.archiveSha256 = archiveSha256;
  }

  /**
   * Reads and indexes a file, or the one model in a ZIP archive.
   *
   * @throws UncheckedIOException when the file cannot be read
   * @throws InputException when it is not a usable Part 21 file
   */
  public static StepFile read(Path file) {
    return read(file, StepLimits.STANDARD);
  }

  /** As {@link #read(Path)}, with other limits. */
  public static StepFile read(Path file, StepLimits limits) {
    String name = String.valueOf(file.getFileName());
    try {
      if (beginsAsZip(file)) {
        return zipped(file, name, limits);
      }
      boolean small = Files.size(file) < MAPPED_FROM;
      StepBytes bytes =
          small ? new HeapBytes(Files.readAllBytes(file)) : MappedBytes.of(file, name);
      return of(new StepSource(bytes, name, limits), Optional.empty());
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + file + ": " + e.getMessage(), e);
    }
  }

  private static StepFile zipped(Path file, String name, StepLimits limits) throws IOException {
    String sha256 = Sha256.hex(MappedBytes.of(file, name));
    try (InputStream archive = Files.newInputStream(file)) {
      byte[] model = IfcZip.model(archive, name, limits);
      return of(new StepSource(new HeapBytes(model), name, limits), Optional.of(sha256));
    }
  }

  private static boolean beginsAsZip(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return IfcZip.isZip(in.readNBytes(4));
    }
  }

  /**
   * Indexes a file that is already in memory, or the one model in a ZIP archive.
   *
   * @param bytes kept without a copy: do not change them afterwards
   */
  public static StepFile of(byte[] bytes, String name) {
    return of(bytes, name, StepLimits.STANDARD);
  }

  /** As {@link #of(byte[], String)}, with other limits. */
  public static StepFile of(byte[] bytes, String name, StepLimits limits) {
    if (!IfcZip.isZip(bytes)) {
      return of(new StepSource(new HeapBytes(bytes), name, limits), Optional.empty());
    }
    byte[] model = IfcZip.model(bytes, name, limits);
    StepSource source = new StepSource(new HeapBytes(model), name, limits);
    return of(source, Optional.of(Sha256.hex(bytes)));
  }

  private static StepFile of(StepSource source, Optional<String> archiveSha256) {
    return new StepFile(source, new StepScanner(source).scan(), archiveSha256);
  }

  public String name() {
    return source.name;
  }

  /** Whether the model came out of a ZIP archive; all offsets are those of the plain text. */
  public boolean zipped() {
    return archiveSha256.isPresent();
  }

  /** SHA-256 of the file as it was given, in lower-case hexadecimal: of the archive, if zipped. */
  public String sha256() {
    return archiveSha256.orElseGet(() -> Sha256.hex(source.bytes));
  }

  /** Whether these ASCII characters stand anywhere in the model's text, be it in a comment. */
  public boolean holds(String characters) {
    return ByteSearch.holds(source.bytes, characters.getBytes(StandardCharsets.US_ASCII));
  }

  /** What was read although the standard forbids it. */
  public List<Finding> findings() {
    return findings;
  }

  /** Number of bytes. */
  public long size() {
    return source.bytes.size();
  }

  /**
   * The bytes of the file: for a small one the bytes themselves, only for reading; a copy for one
   * that stays on the disk.
   *
   * @throws InputException when there are 2 GiB of them or more
   */
  public byte[] bytes() {
    if (source.bytes instanceof HeapBytes heap) {
      return heap.bytes;
    }
    byte[] copy = new byte[inArray(size())];
    source.bytes.copy(0, copy, copy.length);
    return copy;
  }

  private int inArray(long offset) {
    if (offset > MOST_IN_ARRAY) {
      throw tooLong(name(), size());
    }
    return (int) offset;
  }

  /**
   * Refuses a file that can be read but not written to, before any work is done for it.
   *
   * @throws InputException when it has 2 GiB or more
   */
  public static void requireWritable(Path file) {
    long size = file.toFile().length();
    if (size > MOST_IN_ARRAY) {
      throw tooLong(String.valueOf(file.getFileName()), size);
    }
  }

  private static InputException tooLong(String name, long size) {
    return new InputException(
        Place.NOWHERE.inFile(name),
        "the file has " + size + " bytes; at most " + MOST_IN_ARRAY + " can be written to",
        "Export the deck and what is near it as a model of its own.");
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

  /** Where the {@code #} of an instance is. */
  public long offset(int instance) {
    return index.offset(instance);
  }

  /**
   * From {@code #} through {@code ;}.
   *
   * @throws InputException when this is beyond 2 GiB
   */
  public ByteRange range(int instance) {
    StepCursor cursor = cursor(instance);
    long from = cursor.offset();
    new InstanceReader(cursor, new Noticed()).instance();
    return new ByteRange(inArray(from), inArray(cursor.offset()));
  }

  /** The instance; where its text is plain, its values are decoded when they are asked for. */
  public StepInstance decode(int instance) {
    long from = index.offset(instance);
    StepBytes.Window window = source.bytes.shared(from, (int) (end(instance) - from));
    Optional<AttributeText> text =
        keyword(instance).isEmpty()
            ? Optional.empty()
            : AttributeText.at(window, (int) (from - window.base()), source.limits);
    return text.isPresent()
        ? new StepInstance(this, from, id(instance), keyword(instance), text)
        : parsed(instance);
  }

  /** The instance with all of its values decoded. */
  StepInstance parsed(int instance) {
    return new StepParser(cursor(instance)).instance(this, keyword(instance));
  }

  /** Where the next instance begins, or the section ends. */
  private long end(int instance) {
    return instance + 1 == count() ? endOfData : index.offset(instance + 1);
  }

  /** At an instance, with all of its text shown. */
  private StepCursor cursor(int instance) {
    return StepCursor.at(source, index.offset(instance), end(instance));
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
      throw missing(id, needer.place(), what);
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

  /**
   * Indices, in file order, of the instances whose keyword is wanted; it is asked once for each.
   */
  public int[] ofKeywords(Predicate<String> wanted) {
    return index.ofKeywords(wanted);
  }

  /** Highest {@code #} number in the text outside strings and comments, references included. */
  public long highestId() {
    return highestId;
  }

  /**
   * Where the ENDSEC of the last DATA section begins: new instances go in before it.
   *
   * @throws InputException when this is beyond 2 GiB
   */
  public int blockOffset() {
    return inArray(endOfData);
  }

  /** Line and column of a byte, both from 1. */
  public Place place(long byteOffset) {
    return source.place(byteOffset);
  }
}
